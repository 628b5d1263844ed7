// Apart from the schemas: the portal loads these, and zod nowhere.

/** Length of a code without its hyphens: 20 letters or digits of 5 bits each, 100 random bits. */
export const codeLength = 20;

// Without I, L, O and U, which are misread or spell words (Crockford's base 32).
const codePattern = /^[0-9A-HJKMNP-TV-Z]{20}$/;

/** A code as it is kept and compared: without hyphens and spaces, capitals, misread letters put right. */
export const plainCode = (typed: string): string =>
  typed.replace(/[\s-]/g, '').toUpperCase().replace(/O/g, '0').replace(/[IL]/g, '1');

/** A code as it is printed: four groups of five. */
export const groupedCode = (code: string): string =>
  plainCode(code)
    .match(/.{1,5}/g)
    ?.join('-') ?? '';

/** Whether something typed has the form of a code. */
export const looksLikeCode = (typed: string): boolean => codePattern.test(plainCode(typed));
