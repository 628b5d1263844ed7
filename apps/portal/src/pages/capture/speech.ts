import { useCallback, useEffect, useRef, useState } from 'react';

// The Web Speech API, as far as it is used here; TypeScript's DOM library doesn't describe it.
interface SpeechResult {
  isFinal: boolean;
  [at: number]: { transcript: string } | undefined;
}
interface SpeechEvent {
  resultIndex: number;
  results: ArrayLike<SpeechResult>;
}
interface Recogniser {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  onresult: ((event: SpeechEvent) => void) | null;
  onerror: ((event: { error: string }) => void) | null;
  onend: (() => void) | null;
  start(): void;
  abort(): void;
  stop(): void;
}
type SpeechWindow = Window & {
  SpeechRecognition?: new () => Recogniser;
  webkitSpeechRecognition?: new () => Recogniser;
};

/** Why listening ended, in words for the person. */
function troubleOf(error: string): string {
  if (error === 'not-allowed' || error === 'service-not-allowed')
    return 'The browser may not use the microphone here. The microphone key of the keyboard works as well.';
  if (error === 'network')
    return 'The browser’s speech service needs signal. Write, or use the keyboard’s own.';
  return 'Nothing was understood. Try again closer to the microphone, or write.';
}

/**
 * Dictation where the browser has it. `onWords` gets what was said, phrase by phrase.
 *
 * @returns null for `toggle` where the browser has none
 */
export function useSpeech(onWords: (words: string) => void) {
  const [listening, setListening] = useState(false);
  const [heard, setHeard] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const running = useRef<Recogniser | null>(null);
  const give = useRef(onWords);
  useEffect(() => {
    give.current = onWords;
  }, [onWords]);
  useEffect(() => () => running.current?.abort(), []);
  const { SpeechRecognition, webkitSpeechRecognition } = window as SpeechWindow;
  const Speech = SpeechRecognition ?? webkitSpeechRecognition;
  const toggle = useCallback(() => {
    if (running.current) {
      running.current.stop();
      return;
    }
    if (!Speech) return;
    const recogniser = new Speech();
    recogniser.lang = navigator.language;
    recogniser.continuous = true;
    recogniser.interimResults = true;
    recogniser.onresult = (event) => {
      let open = '';
      for (let at = event.resultIndex; at < event.results.length; at += 1) {
        const result = event.results[at];
        const words = result?.[0]?.transcript.trim() ?? '';
        if (result?.isFinal) give.current(words);
        else open += words;
      }
      setHeard(open);
    };
    recogniser.onerror = ({ error }) => {
      if (error !== 'aborted') setTrouble(troubleOf(error));
    };
    recogniser.onend = () => {
      running.current = null;
      setListening(false);
      setHeard('');
    };
    running.current = recogniser;
    setTrouble(null);
    setListening(true);
    recogniser.start();
  }, [Speech]);
  return { toggle: Speech ? toggle : null, listening, heard, trouble };
}
