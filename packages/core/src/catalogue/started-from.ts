import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';
import { keyForm, shownEntry } from './load-entry.ts';

/**
 * The version of the entry that a finding begins from: the one given, when there has been one of that number, or the
 * one read now. Null without a key.
 *
 * @throws Refusal `invalid-input` for a key or a version that the firm's catalogue doesn't have
 */
export async function startedFrom(
  ctx: Ctx,
  input: { firmId: string; key: string | null; version?: number | null | undefined },
): Promise<number | null> {
  const { firmId, key, version } = input;
  if (key === null) {
    if (version != null) {
      throw invalidField('/catalogueVersion', 'A version goes only with the catalogueKey of its entry.');
    }
    return null;
  }
  const shown = await shownEntry(ctx, firmId, key);
  if (shown && (version == null || version === shown.words.version)) return shown.words.version;
  if (version != null && keyForm.test(key)) {
    const saved = await ctx.tx.firmCatalogueEntry.count({ where: { firmId, key, version } });
    const ours = await ctx.tx.catalogueEntry.findUnique({ where: { key }, select: { version: true } });
    // Of ours only the newest words are kept; their numbers only rise.
    if (saved > 0 || (ours && version <= ours.version)) return version;
    if (shown) {
      throw invalidField(
        '/catalogueVersion',
        `There is no version ${version} of “${key}” in your catalogue.`,
      );
    }
  }
  throw invalidField(
    '/catalogueKey',
    `There is no entry “${key}” in your catalogue; GET /v1/catalogue finds one.`,
  );
}
