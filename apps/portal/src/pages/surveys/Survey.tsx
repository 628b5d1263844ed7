import { isStaffOf } from '../../app/roles.ts';
import Reading from '../reading/Reading.tsx';
import { Particulars } from './Particulars.tsx';
import { WithSurvey } from './SurveyFrame.tsx';

/** One address, two readers: the firm's people work on the survey, everyone else reads it. */
export default function Survey({ id }: { id: string }) {
  return (
    <WithSurvey id={id}>
      {(survey) => (isStaffOf(survey) ? <Particulars survey={survey} /> : <Reading id={id} />)}
    </WithSurvey>
  );
}
