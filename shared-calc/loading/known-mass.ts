import { Z_95 } from '../numeric/z-95.ts';
import type { MassKnown } from './records.ts';

/** How sure a mass is, by how it is known: a standard uncertainty and what is added because people state too little. */
export interface KnownMassDefaults {
  sdKg: number;
  biasKg: number;
  /** Where the two come from, for the person who may change them. */
  why: string;
}

/**
 * What stands in the fields until the pilot changes it.
 *
 * A stated mass gains 4.5 kg (10 lb): FAA AC 120-27E has at least 10 lb added to the weight that a passenger states,
 * for clothing and for modesty (from memory). Its spread, and those of the others, are common practice without a source.
 */
export function knownMassDefaults(known: MassKnown, kind: 'person' | 'thing'): KnownMassDefaults {
  switch (known) {
    case 'weighed':
      return {
        sdKg: (kind === 'person' ? 1 : 0.5) / Z_95,
        biasKg: 0,
        why: 'weighed as carried: ±1 kg for a person, ±0.5 kg for a thing, common practice',
      };
    case 'stated':
      return kind === 'person'
        ? {
            sdKg: 6.5 / Z_95,
            biasKg: 4.5,
            why: '4.5 kg (10 lb) is added to a stated weight, after FAA AC 120-27E; ±6.5 kg is common practice',
          }
        : { sdKg: 3 / Z_95, biasKg: 0, why: 'an estimate: ±3 kg, common practice' };
    case 'standard':
      return {
        sdKg: 20 / Z_95,
        biasKg: 0,
        why: 'adults differ from a standard weight by ±20 kg, nine times in ten',
      };
  }
}
