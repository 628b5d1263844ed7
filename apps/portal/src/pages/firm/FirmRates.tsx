import { etagOf } from '@garboard/contract/client';
import type { FirmRates as Rates } from '@garboard/contract/quotations';
import { isCurrency } from '@garboard/trade/costs';
import { releaseRuleLabels } from '@garboard/trade/engagement';
import { writtenAmount, writtenRate } from '@garboard/trade/fees';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { amountOf, minorOf, wholeOf } from '../../app/money.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { RadioGroup, SelectField, TextArea, TextField } from '../../ui/Field.tsx';

const lengthUnits = { m: 'a metre', ft: 'a foot' };
const distanceUnits = { km: 'a kilometre', mile: 'a mile' };

/** What the firm charges, and when it hands reports over; the principal may change it. */
export function FirmRates({ firmId, editable }: { firmId: string; editable: boolean }) {
  const rates = useAnswer('getFirmRates', { params: { id: firmId } });
  const [editing, setEditing] = useState<Rates | null>(null);
  return (
    <section className="stack">
      <h2>Rates and payment</h2>
      {rates.error ? <ErrorNotice quiet error={rates.error} onRetry={() => void rates.refetch()} /> : null}
      {rates.data ? null : <Loading what="the rates" />}
      {editing ? <Editor firmId={firmId} rates={editing} onClose={() => setEditing(null)} /> : null}
      {rates.data && !editing ? (
        <>
          {rates.data.version === 0 ? (
            <p className="measure">
              Not set yet. Once they are, quotations are reckoned from them. Reports are handed over as soon
              as they are issued.
            </p>
          ) : (
            <Said rates={rates.data} />
          )}
          {editable ? (
            <p>
              <Button onClick={() => setEditing(rates.data ?? null)}>
                {rates.data.version === 0 ? 'Set your rates' : 'Change the rates'}
              </Button>
            </p>
          ) : null}
        </>
      ) : null}
    </section>
  );
}

function Said({ rates }: { rates: Rates }) {
  const money = (minor: number) => writtenAmount(minor, rates.currency);
  const charged = (minor: number, per: string) => (minor === 0 ? 'Not charged' : `${money(minor)} ${per}`);
  return (
    <Facts
      facts={[
        ['By length overall', charged(rates.perLength, lengthUnits[rates.lengthUnit])],
        ['By hour', charged(rates.perHour, 'an hour')],
        ['Travel', charged(rates.perDistance, distanceUnits[rates.distanceUnit])],
        ['Minimum fee', rates.minimum === 0 ? 'None' : `${money(rates.minimum)}, before travel and tax`],
        ['Tax', rates.taxRate === 0 ? 'None' : `${rates.taxName || 'Tax'} ${writtenRate(rates.taxRate)}`],
        ['A quotation stands', `${rates.quotationDays} days`],
        ['An invoice is due', `after ${rates.paymentDays} days`],
        ['How to pay', rates.paymentWords || 'Not stated'],
        ['Reports are handed over', releaseRuleLabels[rates.releaseRule]],
      ]}
    />
  );
}

function draftOf(rates: Rates) {
  const money = (minor: number) => amountOf(minor, rates.currency);
  return {
    ...rates,
    currency: rates.currency as string,
    perLength: money(rates.perLength),
    perHour: money(rates.perHour),
    perDistance: money(rates.perDistance),
    minimum: money(rates.minimum),
    taxRate: String(rates.taxRate / 1_000),
    quotationDays: String(rates.quotationDays),
    paymentDays: String(rates.paymentDays),
  };
}
type Draft = ReturnType<typeof draftOf>;

/** As the API wants it; undefined while a figure can't be read. */
function ratesFrom(draft: Draft): Omit<Rates, 'version'> | undefined {
  const currency = draft.currency.trim().toUpperCase();
  if (!isCurrency(currency)) return undefined;
  const money = (text: string) => minorOf(text || '0', currency);
  const [perLength, perHour, perDistance, minimum] = [
    money(draft.perLength),
    money(draft.perHour),
    money(draft.perDistance),
    money(draft.minimum),
  ];
  const taxRate = wholeOf(draft.taxRate || '0', 3);
  if (perLength === undefined || perHour === undefined || perDistance === undefined) return undefined;
  if (minimum === undefined || taxRate === undefined) return undefined;
  const { lengthUnit, distanceUnit, taxName, releaseRule, paymentWords } = draft;
  const days = { quotationDays: Number(draft.quotationDays), paymentDays: Number(draft.paymentDays) };
  return {
    ...{ currency, perLength, lengthUnit, perHour, perDistance, distanceUnit, minimum, taxName, taxRate },
    ...{ ...days, releaseRule, paymentWords },
  };
}

function Editor({ firmId, rates, onClose }: { firmId: string; rates: Rates; onClose: () => void }) {
  const [draft, setDraft] = useState(() => draftOf(rates));
  const [unread, setUnread] = useState(false);
  const save = useAction({
    run: (body: Omit<Rates, 'version'>) =>
      call('putFirmRates', { params: { id: firmId }, body, ifMatch: etagOf(rates) }),
    done: 'The rates are saved. What was sent before keeps its own.',
    touches: ['getFirmRates', 'getRelease'],
    onDone: onClose,
  });
  const set = (part: Partial<Draft>) => setDraft({ ...draft, ...part });
  const money = (label: string, key: 'perLength' | 'perHour' | 'perDistance' | 'minimum') => (
    <TextField
      label={label}
      inputMode="decimal"
      value={draft[key]}
      onChange={(value) => set({ [key]: value })}
      error={fieldError(save.error, `/${key}`)}
    />
  );
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        const body = ratesFrom(draft);
        setUnread(!body);
        if (body) save.run(body);
      }}
    >
      <ErrorNotice error={save.error} />
      {unread ? (
        <p className="field-error" role="alert">
          Write amounts and the tax in figures, and the currency by its three letters, such as EUR.
        </p>
      ) : null}
      <TextField
        label="Currency"
        hint="Three letters, such as EUR. A rate of 0 isn’t charged."
        required
        maxLength={3}
        value={draft.currency}
        onChange={(currency) => set({ currency })}
        error={fieldError(save.error, '/currency')}
      />
      <div className="fields-2">
        {money('For length overall', 'perLength')}
        <SelectField
          label="Length is charged by"
          value={draft.lengthUnit}
          options={lengthUnits}
          onChange={(lengthUnit) => lengthUnit && set({ lengthUnit })}
        />
        {money('For an hour', 'perHour')}
        {money('Minimum fee, before travel and tax', 'minimum')}
        {money('For travel', 'perDistance')}
        <SelectField
          label="Travel is charged by"
          value={draft.distanceUnit}
          options={distanceUnits}
          onChange={(distanceUnit) => distanceUnit && set({ distanceUnit })}
        />
        <TextField
          label="What the tax is called"
          optional
          hint="Such as VAT."
          maxLength={40}
          value={draft.taxName}
          onChange={(taxName) => set({ taxName })}
        />
        <TextField
          label="Tax, %"
          hint="0 when you charge none."
          inputMode="decimal"
          value={draft.taxRate}
          onChange={(taxRate) => set({ taxRate })}
          error={fieldError(save.error, '/taxRate')}
        />
        <TextField
          label="Days a quotation stands"
          type="number"
          min={1}
          max={365}
          required
          value={draft.quotationDays}
          onChange={(quotationDays) => set({ quotationDays })}
        />
        <TextField
          label="Days until an invoice is due"
          type="number"
          min={0}
          max={365}
          required
          value={draft.paymentDays}
          onChange={(paymentDays) => set({ paymentDays })}
        />
      </div>
      <TextArea
        label="How to pay"
        optional
        hint="Your bank account and what to quote. It stands on every invoice."
        maxLength={1_000}
        value={draft.paymentWords}
        onChange={(paymentWords) => set({ paymentWords })}
      />
      <RadioGroup
        label="An issued report is handed over"
        hint="Until then no party sees it. The rule holds for surveys first issued from now on."
        name="release-rule"
        value={draft.releaseRule}
        options={releaseRuleLabels}
        onChange={(releaseRule) => set({ releaseRule })}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}
