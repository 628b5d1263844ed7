import { createHash } from 'node:crypto';
import { reportDataFileName, reportDataText } from '@garboard/contract/report-data';
import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { groupedCode } from '@garboard/contract/verification-code';
import type { ContentsLine } from './contents.tsx';
import { QrCode } from './qr-code.tsx';

type Of = { snapshot: ReportSnapshot };

/** Its line in the contents. */
export const verificationLine: ContentsLine = { id: 'verification', title: 'Verification' };

/** Documents frozen before there were codes can't be looked up, and previews are not issued. */
export const hasVerification = ({ verification }: ReportSnapshot): boolean => verification !== null;

/** Four hexadecimal digits at a time, so that two long numbers can be compared by eye. */
const inFours = (hex: string): string => hex.match(/.{1,4}/g)?.join(' ') ?? hex;

const dataHash = (snapshot: ReportSnapshot): string =>
  createHash('sha256').update(reportDataText(snapshot)).digest('hex');

/** The last page of a report: how anybody can tell that it is genuine, complete and not replaced. */
export function Verification({ snapshot }: Of) {
  const { verification, firm, survey, revision } = snapshot;
  if (!verification) return null;
  return (
    <section id="verification" className="keep">
      <h2>Verification</h2>
      <div className="verify">
        <QrCode text={verification.url} label={`QR code of the address ${verification.url}`} />
        <dl>
          <div>
            <dt>Code</dt>
            <dd className="verify-code">{groupedCode(verification.code)}</dd>
          </div>
          <div>
            <dt>Address</dt>
            <dd>{verification.url}</dd>
          </div>
          <div>
            <dt>Document</dt>
            <dd dir="auto">
              {firm.name}, survey {survey.number}, revision {revision}
            </dd>
          </div>
          <div>
            <dt>SHA-256 of the attached data</dt>
            <dd className="verify-hash">{inFours(dataHash(snapshot))}</dd>
          </div>
        </dl>
      </div>
      <h3>On paper</h3>
      <p>
        Scan the square or type the address. The page that opens says which firm issued this document, when,
        and whether a later revision has replaced it. It shows nothing of what the document says.
      </p>
      <h3>As a file</h3>
      <p>
        On the same page a PDF file can be compared with the one that was issued: the file stays on your
        device, and only its SHA-256 is sent. One changed character gives a different answer.
      </p>
      <p>
        The file carries the firm’s digital signature over all of it, which PDF readers can check without us:
        the signature is valid only while the file is as it was signed. Whether the certificate’s name can be
        relied on is for its issuer to say; a firm may have made its own.
      </p>
      <p>
        It also carries what it says as data, {reportDataFileName}, for programs. The number above is that
        attachment’s.
      </p>
    </section>
  );
}

/** The same in short, at the end of a letter. */
export function VerificationStrip({ snapshot: { verification } }: Of) {
  if (!verification) return null;
  return (
    <div className="verify verify-strip keep">
      <QrCode text={verification.url} label={`QR code of the address ${verification.url}`} />
      <p>
        Whether this letter is genuine and still stands can be looked up by anybody at {verification.url},
        code {groupedCode(verification.code)}. The file is digitally signed.
      </p>
    </div>
  );
}
