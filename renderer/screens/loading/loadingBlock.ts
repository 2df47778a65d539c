import type { AircraftRecord, WeighingRecord } from '../../../shared-calc/loading/records.ts';
import { dayText } from '../../ui/dateKind.ts';

/** The title block of a sheet about loadings: what every figure on it rests on. */
export function loadingBlock(
  shown: { name: string; text: string },
  aircraft: AircraftRecord | null,
  weighing: WeighingRecord | null,
): { name: string; text: string }[] {
  return [
    shown,
    {
      name: 'Empty weight',
      text: weighing === null ? 'not entered' : `${dayText(weighing.weighedOn)}, ${weighing.how}`,
    },
    { name: 'Envelope compared with the manual', text: comparedText(aircraft) },
    { name: 'Decides', text: 'the approved flight manual' },
  ];
}

function comparedText(aircraft: AircraftRecord | null): string {
  if (aircraft === null || aircraft.envelopes.length === 0) return 'none entered';
  const isOpen = aircraft.envelopes.some(
    ({ source }) => source.from === 'manual' && source.comparedOn === null,
  );
  if (isOpen) return 'not yet';
  return aircraft.envelopes
    .map(({ source }) => (source.comparedOn === null ? source.from : dayText(source.comparedOn)))
    .filter((words, index, all) => all.indexOf(words) === index)
    .join(', ');
}
