import { agreementOpening, agreementParts, agreementTitle, taxWords } from '@garboard/trade/engagement';
import { taxByRate, writtenAmount, writtenQuantity } from '@garboard/trade/fees';
import { Facts } from './parts.tsx';
import type { AcceptedAgreement } from './render-agreement.ts';

/** What a client accepted, as a letter of the firm, with how it was accepted. */
export function Agreement({ agreement }: { agreement: AcceptedAgreement }) {
  const { document } = agreement;
  const contacts = [document.firm.email, document.firm.phone].filter((contact) => contact !== null);
  return (
    <main className="letter">
      <header className="letterhead">
        <p className="firm">{document.firm.name}</p>
        <p>{[...document.firm.addressLines, ...contacts].join('  ·  ')}</p>
      </header>
      <div className="letter-top">
        <p dir="auto">{document.addressee}</p>
      </div>
      <h1>{agreementTitle(document)}</h1>
      {agreementOpening(document).map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      <Fee agreement={agreement} />
      {agreementParts(document).map((part) => (
        <section key={part.title}>
          <h2>{part.title}</h2>
          {part.paragraphs.map((paragraph) => (
            <p key={paragraph} className="prose" dir="auto">
              {paragraph}
            </p>
          ))}
        </section>
      ))}
      <Acceptance agreement={agreement} />
    </main>
  );
}

function Fee({ agreement: { document } }: { agreement: AcceptedAgreement }) {
  const money = (minor: number) => writtenAmount(minor, document.currency);
  const taxes = taxByRate(document.lines).filter(({ taxRate }) => taxRate > 0);
  return (
    <section>
      <h2>Fee</h2>
      <table className="fee">
        <caption className="unseen">The fee, line by line</caption>
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">Quantity</th>
            <th scope="col">Price</th>
            <th scope="col">Amount</th>
          </tr>
        </thead>
        <tbody>
          {document.lines.map((line) => (
            <tr key={JSON.stringify(line)}>
              <th scope="row" dir="auto">
                {line.text}
              </th>
              <td>{writtenQuantity(line)}</td>
              <td>{writtenQuantity(line) === '' ? '' : money(line.price)}</td>
              <td>{money(line.net)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          {taxes.map(({ taxRate, net, tax }) => (
            <tr key={taxRate}>
              <th scope="row" colSpan={3}>
                {taxWords(document.taxName, taxRate)} on {money(net)}
              </th>
              <td>{money(tax)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row" colSpan={3}>
              Total
            </th>
            <td>{money(document.total)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function Acceptance({ agreement }: { agreement: AcceptedAgreement }) {
  const { acceptedBy, acceptedAt, acceptedFrom, timeZone, textSha256 } = agreement;
  const time = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'medium', timeZone });
  return (
    <section className="acceptance keep">
      <h2>Accepted online</h2>
      <Facts
        caption="How it was accepted"
        rows={[
          ['Name, as typed', acceptedBy],
          ['Time', `${time.format(new Date(acceptedAt))} (${timeZone}); ${acceptedAt}`],
          ['Network address', acceptedFrom],
          [
            'SHA-256 of the text',
            <span key="hash" className="fingerprint">
              {textSha256}
            </span>,
          ],
        ]}
      />
    </section>
  );
}
