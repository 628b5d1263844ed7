import type { Verification } from '@garboard/contract/verification';
import { groupedCode, looksLikeCode } from '@garboard/contract/verification-code';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';
import { FileDrop } from '../../ui/FileDrop.tsx';
import { Page } from '../../ui/Page.tsx';
import { hashFile } from './hashFile.ts';
import { type Asked, Verdict } from './Verdict.tsx';

const notACode = 'A code has 20 letters and digits, such as 7K3QD-9XM2R-4ABCD-EFGHJ.';

/** For anybody, without signing in: whether a document is genuine and still stands. */
export default function Verify({ code = '' }: { code?: string }) {
  const [, go] = useLocation();
  const [typed, setTyped] = useState(code);
  const [wrong, setWrong] = useState('');
  // The address, as a QR code brings it, says which code is meant.
  const byCode = useAnswer('verifyCode', { params: { code } }, { enabled: looksLikeCode(code) });
  const [file, setFile] = useState<{ asked: Asked; answer: Verification }>();
  const byFile = useAction({
    run: async (chosen: File) => {
      const sha256 = await hashFile(chosen);
      const answer = await call('verifyFile', { body: { sha256 } });
      return { asked: { file: chosen.name, sha256 }, answer };
    },
    onDone: setFile,
  });
  const found = file ?? (byCode.data ? { asked: { code }, answer: byCode.data } : undefined);
  return (
    <Page title="Is this document genuine?">
      <div className="stack-wide">
        <p className="measure">
          Every report and letter issued here carries a verification code, on its last page. Here anybody can
          see which firm issued it, when, and whether it still stands; nothing of what it says is shown.
        </p>
        <div aria-live="polite">
          {found ? <Verdict asked={found.asked} answer={found.answer} /> : null}
          <ErrorNotice error={byCode.error ?? byFile.error} />
        </div>
        <form
          className="stack measure"
          onSubmit={(event) => {
            event.preventDefault();
            const right = looksLikeCode(typed);
            setWrong(right ? '' : notACode);
            if (!right) return;
            setFile(undefined);
            go(`/verify/${groupedCode(typed)}`);
          }}
        >
          <TextField
            label="Verification code"
            hint="With or without hyphens."
            autoCapitalize="characters"
            autoComplete="off"
            spellCheck={false}
            maxLength={60}
            value={typed}
            onChange={setTyped}
            error={wrong || (code && !looksLikeCode(code) ? notACode : '')}
          />
          <div className="actions">
            <Button kind="main" type="submit" busy={byCode.isFetching} busyLabel="Looking it up…">
              Look it up
            </Button>
          </div>
        </form>
        <section className="stack measure">
          <h2>Or compare the file</h2>
          <FileDrop
            label="Choose the PDF file"
            hint="Or drop it here. It stays on this device: only its SHA-256, a number made from it, is sent."
            accept="application/pdf,.pdf"
            onFiles={([chosen]) => chosen && byFile.run(chosen)}
          />
          {byFile.busy ? <p role="status">Comparing…</p> : null}
        </section>
      </div>
    </Page>
  );
}
