import type { Verification } from '@garboard/contract/verification';
import { groupedCode } from '@garboard/contract/verification-code';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import { Facts } from '../../ui/Facts.tsx';
import { formatInstant } from '../../ui/format.ts';

/** What was asked about. */
export type Asked = { code: string } | { file: string; sha256: string };

const headings = {
  genuine: 'Genuine, and it still stands',
  superseded: 'Genuine, but replaced by a later revision',
  unknown: 'Not known here',
} as const;

/** The answer in words. */
export function Verdict({ asked, answer }: { asked: Asked; answer: Verification }) {
  const { verdict, document: issued } = answer;
  return (
    <section className="stack measure">
      <h2 className={verdict === 'genuine' ? undefined : 'signal'}>{headings[verdict]}</h2>
      {issued ? (
        <>
          {issued.supersededBy ? (
            <p>
              Revision {issued.supersededBy.revision} took its place on{' '}
              {formatInstant(issued.supersededBy.issuedAt)}. Ask the firm, or whoever gave you this one, for
              it.
            </p>
          ) : null}
          <Facts
            facts={[
              ['Issued by', issued.firmName],
              ['Document', `${reportKindLabels[issued.kind]}, revision ${issued.revision}`],
              ['Issued', formatInstant(issued.issuedAt)],
              ...('file' in asked
                ? ([['File', `${asked.file} is the very file that was issued`]] as const)
                : ([
                    ['Code', groupedCode(asked.code)],
                    [
                      'SHA-256 of the file',
                      <span key="hash" className="text">
                        {issued.sha256}
                      </span>,
                    ],
                  ] as const)),
            ]}
          />
          {'file' in asked ? null : (
            <p>
              The code is that of a document issued here. Whether the copy you hold was changed, the code
              alone can’t tell: choose its PDF file below, or compare the details above with what is printed.
            </p>
          )}
        </>
      ) : (
        <Unknown asked={asked} />
      )}
    </section>
  );
}

function Unknown({ asked }: { asked: Asked }) {
  if ('code' in asked) {
    return (
      <p>
        No document issued here has the code {groupedCode(asked.code) || 'you typed'}. Compare it with the
        last page of the document, letter by letter. The address printed beside it must be the one of this
        page.
      </p>
    );
  }
  return (
    <p>
      {asked.file} is not a file that was issued here, or it has been changed since: printed to PDF again,
      saved by another program, signed once more. Ask the firm for the file as it was issued.
    </p>
  );
}
