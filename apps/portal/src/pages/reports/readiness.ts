import type { Coverage } from '@garboard/contract/coverage';
import type { Finding } from '@garboard/contract/findings';
import type { ReviewStanding } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import { surveyMayBeIssued } from '@garboard/trade/states';
import { surveyStateLabels, systemLabels } from '@garboard/trade/vocabulary';
import { count, listed } from '../../ui/format.ts';
import { reviewSentence } from './reviewSentence.ts';

/** One line of the list looked through before issuing. */
export interface Check {
  key: string;
  /** `missing` stops the report; `look` is for the surveyor to judge. */
  verdict: 'ready' | 'missing' | 'look';
  text: string;
  /** Where it can be mended, below the survey's address. */
  place: string;
}

/** What stands in the way of issuing the report, and what deserves another look. */
export function readiness(
  survey: Survey,
  recorded: readonly Finding[],
  coverage: Coverage,
  review: ReviewStanding,
): Check[] {
  const checks: Check[] = [];
  // What was withdrawn is printed no more.
  const findings = recorded.filter((finding) => finding.state !== 'withdrawn');
  const add = (key: string, place: string, verdict: Check['verdict'], text: string) =>
    checks.push({ key, place, verdict, text });

  if (!surveyMayBeIssued(survey.state)) {
    add(
      'state',
      '',
      'missing',
      `The survey is “${surveyStateLabels[survey.state]}”. Move it to drafting first.`,
    );
  }
  const visits = survey.attendances.length;
  add(
    'attendances',
    '/attendances',
    visits ? 'ready' : 'missing',
    visits ? count(visits, 'attendance') : 'No attendance is recorded.',
  );
  add(
    'findings',
    '/findings',
    findings.length ? 'ready' : 'missing',
    findings.length ? count(findings.length, 'finding') : 'No finding is recorded.',
  );
  for (const finding of findings) {
    const missing = [
      finding.observed ? '' : 'what was seen',
      finding.recommendation ? '' : 'what to do',
    ].filter(Boolean);
    const silent = missing.length ? missing : finding.consequence ? [] : ['why it matters'];
    if (silent.length) {
      add(
        finding.id,
        `/findings/${finding.id}/edit`,
        missing.length ? 'missing' : 'look',
        `Finding ${finding.number}, ${finding.title}: nothing written about ${listed(silent)}.`,
      );
    }
  }
  const open = coverage.unanswered.map((system) => systemLabels[system]);
  add(
    'coverage',
    '/coverage',
    open.length ? 'missing' : 'ready',
    open.length
      ? `Coverage is not answered for ${count(open.length, 'system')}: ${open.join('; ')}.`
      : 'Every system is answered for',
  );
  add(
    'surveyor',
    '',
    survey.surveyorName ? 'ready' : 'missing',
    survey.surveyorName ? `Signed by ${survey.surveyorName}` : 'No surveyor is named to sign.',
  );
  add(
    'scope',
    '',
    survey.scope ? 'ready' : 'look',
    survey.scope ? 'Scope is written' : 'The scope is empty.',
  );
  add(
    'limitations',
    '',
    survey.limitations ? 'ready' : 'look',
    survey.limitations ? 'Limitations are written' : 'The limitations are empty.',
  );
  if (review.required || review.latest) {
    const missing = review.required ? 'missing' : 'look';
    add('review', '/review', review.stands ? 'ready' : missing, reviewSentence(review));
  }
  if (review.openThreads) {
    const threads = count(review.openThreads, 'thread of comments is', 'threads of comments are');
    add('threads', '/review', 'look', `${threads} not settled.`);
  }
  return checks;
}
