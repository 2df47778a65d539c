import type { OutputOf } from '../../../main/requests/table.ts';

export type Proposed = OutputOf<'weather.proposeMapping'>;
export type Mapping = NonNullable<Proposed['mapping']>;
type Quantity = Mapping['values'][number]['quantity'];

type TimeRole = 'time' | 'year' | 'month' | 'day' | 'hour' | 'minute';
export type Role = 'not used' | 'station' | TimeRole | Quantity;

/** The roles besides measured values, in words. */
export const timeRoleWords: Record<TimeRole | 'station' | 'not used', string> = {
  'not used': 'not used',
  station: 'station',
  time: 'date and time',
  year: 'year',
  month: 'month',
  day: 'day',
  hour: 'hour',
  minute: 'minute',
};

/** What a table's columns are, while a person says it: a role and, for measured values, a unit, column by column. */
export interface MappingDraft {
  columns: { name: string; role: Role; unit: string | null }[];
  order: 'year first' | 'month first' | 'day first';
  zone: Mapping['zone'];
  nature: Mapping['nature'];
}

export function draftOf({ columns, mapping }: Proposed): MappingDraft {
  return {
    columns: columns.map(({ name }) => roleIn(mapping, name)),
    order: mapping?.time.kind === 'stamp' ? mapping.time.order : 'year first',
    zone: mapping?.zone ?? { kind: 'offset', minutes: 0 },
    nature: mapping?.nature ?? 'observed',
  };
}

function roleIn(mapping: Mapping | null, name: string): MappingDraft['columns'][number] {
  if (mapping === null) return { name, role: 'not used', unit: null };
  const value = mapping.values.find(({ column }) => column === name);
  if (value !== undefined) return { name, role: value.quantity, unit: value.unit };
  if (mapping.station === name) return { name, role: 'station', unit: null };
  const { time } = mapping;
  if (time.kind === 'stamp') return { name, role: time.column === name ? 'time' : 'not used', unit: null };
  const part = (['year', 'month', 'day', 'hour', 'minute'] as const).find((each) => time[each] === name);
  return { name, role: part ?? 'not used', unit: null };
}

/** A column in another role; the one that had it before is not used any more. */
export function withRole(
  draft: MappingDraft,
  name: string,
  role: Role,
  choices: Proposed['choices'],
): MappingDraft {
  const units = choices.find(({ quantity }) => quantity === role)?.units ?? [];
  return {
    ...draft,
    columns: draft.columns.map((column) => {
      if (column.name === name) return { name, role, unit: units[0] ?? null };
      return column.role === role && role !== 'not used'
        ? { ...column, role: 'not used', unit: null }
        : column;
    }),
  };
}

/** The mapping that a draft comes to, or the sentence for what is missing in it. */
export function mappingOf(
  { columns, order, zone, nature }: MappingDraft,
  { delimiter, linesBefore }: Pick<Proposed, 'delimiter' | 'linesBefore'>,
): Mapping | string {
  const nameOf = (role: Role) => columns.find((column) => column.role === role)?.name ?? null;
  const time = timeOf(nameOf, order);
  if (time === null) return 'Say which column is the date and time, or which are year, month, day and hour.';
  const values = columns.flatMap(({ name, role, unit }) =>
    unit === null ? [] : [{ quantity: role as Quantity, column: name, unit }],
  );
  const has = (...any: Quantity[]) => values.some(({ quantity }) => any.includes(quantity));
  if (!has('temperature')) return 'Say which column is the temperature.';
  if (!has('dew point', 'humidity')) return 'Say which column is the dew point or the humidity.';
  if (!has('station pressure', 'altimeter setting', 'sea-level pressure'))
    return 'Say which column is a pressure, and which pressure.';
  return {
    delimiter: delimiter as Mapping['delimiter'],
    linesBefore,
    time,
    zone,
    station: nameOf('station'),
    values,
    nature,
  };
}

function timeOf(nameOf: (role: Role) => string | null, order: MappingDraft['order']): Mapping['time'] | null {
  const stamp = nameOf('time');
  if (stamp !== null) return { kind: 'stamp', column: stamp, order };
  const [year, month, day, hour] = [nameOf('year'), nameOf('month'), nameOf('day'), nameOf('hour')];
  if (year === null || month === null || day === null || hour === null) return null;
  return { kind: 'parts', year, month, day, hour, minute: nameOf('minute') };
}
