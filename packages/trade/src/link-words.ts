import type { Language } from './languages.ts';

/** What a mail with a one-time link says. */
export interface LinkWords {
  subject: string;
  opening: string;
  asking: string;
  closing: string;
}
type Words = Record<'invitation' | 'sign-in', (minutes: number) => LinkWords>;

const english: Words = {
  invitation: (minutes) => ({
    subject: 'Your invitation to Garboard',
    opening:
      'A marine survey firm has invited you to Garboard, where its surveys can be read and followed up.',
    asking: 'Open this link to sign in for the first time:',
    closing: `The link works once, within ${minutes} minutes. If it has run out, open it all the same: you can have a new one sent from there. If you did not expect this message, you need do nothing.`,
  }),
  'sign-in': (minutes) => ({
    subject: 'Your link to sign in to Garboard',
    opening: 'Somebody, most likely you, asked for a link to sign in to Garboard.',
    asking: 'Open this link to sign in:',
    closing: `The link works once, within ${minutes} minutes, and only for your account. If you did not ask for it, you need do nothing: nobody can sign in without this message. Do not pass it on.`,
  }),
};

const german: Words = {
  invitation: (minutes) => ({
    subject: 'Ihre Einladung zu Garboard',
    opening:
      'Ein Sachverständigenbüro für Boote hat Sie zu Garboard eingeladen. Dort lesen Sie seine Gutachten und verfolgen, was daraus wird.',
    asking: 'Mit diesem Link melden Sie sich zum ersten Mal an:',
    closing: `Der Link gilt einmal und ${minutes} Minuten lang. Ist er abgelaufen, öffnen Sie ihn trotzdem: Von dort lassen Sie sich einen neuen schicken. Haben Sie diese Nachricht nicht erwartet, müssen Sie nichts tun.`,
  }),
  'sign-in': (minutes) => ({
    subject: 'Ihr Link zur Anmeldung bei Garboard',
    opening: 'Jemand, wahrscheinlich Sie selbst, hat um einen Link zur Anmeldung bei Garboard gebeten.',
    asking: 'Mit diesem Link melden Sie sich an:',
    closing: `Der Link gilt einmal, ${minutes} Minuten lang und nur für Ihr Konto. Haben Sie nicht darum gebeten, müssen Sie nichts tun: Ohne diese Nachricht kann sich niemand anmelden. Geben Sie sie nicht weiter.`,
  }),
};

const french: Words = {
  invitation: (minutes) => ({
    subject: 'Votre invitation à Garboard',
    opening:
      'Un cabinet d’expertise maritime vous invite sur Garboard, où l’on lit ses expertises et en suit les suites.',
    asking: 'Ouvrez ce lien pour vous connecter la première fois :',
    closing: `Le lien sert une seule fois, pendant ${minutes} minutes. S’il a expiré, ouvrez-le quand même : vous pourrez en demander un autre. Si vous n’attendiez pas ce message, vous n’avez rien à faire.`,
  }),
  'sign-in': (minutes) => ({
    subject: 'Votre lien de connexion à Garboard',
    opening: 'Quelqu’un, sans doute vous, a demandé un lien pour se connecter à Garboard.',
    asking: 'Ouvrez ce lien pour vous connecter :',
    closing: `Le lien sert une seule fois, pendant ${minutes} minutes et pour votre compte seulement. Si vous ne l’avez pas demandé, vous n’avez rien à faire : sans ce message, personne ne peut se connecter. Ne le transmettez pas.`,
  }),
};

const spanish: Words = {
  invitation: (minutes) => ({
    subject: 'Su invitación a Garboard',
    opening:
      'Un despacho de peritaje náutico le invita a Garboard, donde se leen sus informes y se sigue lo que resulta de ellos.',
    asking: 'Abra este enlace para entrar por primera vez:',
    closing: `El enlace sirve una sola vez, durante ${minutes} minutos. Si ha caducado, ábralo de todos modos: desde allí puede pedir otro. Si no esperaba este mensaje, no tiene que hacer nada.`,
  }),
  'sign-in': (minutes) => ({
    subject: 'Su enlace para entrar en Garboard',
    opening: 'Alguien, seguramente usted, ha pedido un enlace para entrar en Garboard.',
    asking: 'Abra este enlace para entrar:',
    closing: `El enlace sirve una sola vez, durante ${minutes} minutos y solo para su cuenta. Si no lo ha pedido, no tiene que hacer nada: sin este mensaje nadie puede entrar. No lo pase a nadie.`,
  }),
};

/** In each language of mail. */
export const linkWords: Record<Language, Words> = {
  'en-GB': english,
  'en-US': english,
  de: german,
  fr: french,
  es: spanish,
};
