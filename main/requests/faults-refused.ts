import type { Fault } from '../../shared-calc/loading/aircraft-faults.ts';
import { Refusal } from './problem.ts';

/** One refusal for all that contradicts itself in an input; each fault's path is put below `under`. */
export function faultsRefused(faults: readonly Fault[], under: string): Refusal {
  const sentence = faults.map((fault) => capital(fault.sentence)).join('. ');
  return new Refusal(
    'input-refused',
    `${sentence}. Nothing was changed.`,
    faults.map((fault) => ({ path: `${under}${fault.path}`, sentence: `${capital(fault.sentence)}.` })),
  );
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
