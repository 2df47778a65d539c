import { z } from 'zod';
import { mappingOfShape } from '../store/weather-mappings.ts';
import { nameOf, readHead, type Content } from '../weather-import/content.ts';
import { FileProblem } from '../weather-import/file-problem.ts';
import { kindOf } from '../weather-import/kinds.ts';
import { mappingSchema, quantities, shapeOfHeader, unitsOf } from '../weather-import/mapped/mapping.ts';
import { propose } from '../weather-import/mapped/propose.ts';
import { tableHead, type TableHead } from '../weather-import/mapped/table-head.ts';
import { work } from './define.ts';
import { Refusal } from './problem.ts';
import { fileToRead } from './weather-schema.ts';

/** So much of a file is looked at: some weeks of an hourly table. */
const lookedAtBytes = 1 << 20;
const lookedAtRows = 5000;
const examples = 3;

export const weatherMappingRequests = {
  'weather.proposeMapping': work({
    about:
      'Propose which columns of an unknown hourly table are what, from its header, units and values, or as a table of its shape was read last. Keeps nothing.',
    input: fileToRead.pick({ path: true, entry: true }),
    output: z.strictObject({
      fileName: z.string(),
      /** Whether a reader of its own knows the file, so that no mapping is needed. */
      isKnownKind: z.boolean(),
      delimiter: z.string(),
      linesBefore: z.int(),
      columns: z.array(z.strictObject({ name: z.string(), examples: z.array(z.string()) })),
      /** null where time or temperature could not be found: the person begins from nothing. */
      mapping: mappingSchema.nullable(),
      remembered: z.boolean(),
      reasons: z.array(z.strictObject({ about: z.string(), why: z.string(), sure: z.boolean() })),
      /** By the printed clock, on average: a check on the zone. */
      warmestPrintedHour: z.int().nullable(),
      /** What a column can be, and the units it can have. */
      choices: z.array(z.strictObject({ quantity: z.string(), units: z.array(z.string()) })),
    }),
    handle: async ({ db }, content) => {
      const fileName = nameOf(content);
      const head = await headOf(content);
      const table = tableIn(head, fileName);
      const proposed = propose(table, fileName);
      const remembered = mappingOfShape(db, shapeOfHeader(table.names));
      return {
        fileName,
        isKnownKind: kindOf(head.subarray(0, 65_536)) !== null,
        delimiter: table.delimiter,
        linesBefore: table.linesBefore,
        columns: table.names.map((name, at) => ({
          name,
          examples: table.rows.slice(0, examples).map((row) => row[at] ?? ''),
        })),
        mapping:
          remembered === null
            ? proposed.mapping
            : { ...remembered, delimiter: table.delimiter, linesBefore: table.linesBefore },
        remembered: remembered !== null,
        reasons: proposed.reasons,
        warmestPrintedHour: proposed.warmestPrintedHour,
        choices: Object.entries(quantities).map(([quantity, measured]) => ({
          quantity,
          units: Object.keys(unitsOf[measured]),
        })),
      };
    },
  }),
};

/** The shape of a table's header, under which its mapping is remembered. */
export async function shapeOfFile(content: Content): Promise<string | null> {
  const table = tableHead(await readHead(content, 65_536));
  return table === null ? null : shapeOfHeader(table.names);
}

function tableIn(head: Buffer, fileName: string): TableHead {
  const table = tableHead(head);
  if (table === null)
    throw new Refusal(
      'file-refused',
      `${fileName} does not look like a table: no line of names that the lines behind it follow was found. Nothing was changed.`,
    );
  return { ...table, rows: table.rows.slice(0, lookedAtRows) };
}

async function headOf(content: Content): Promise<Buffer> {
  try {
    return await readHead(content, lookedAtBytes);
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    throw new Refusal(
      'file-refused',
      error instanceof FileProblem
        ? `${nameOf(content)} was not read. ${words} Nothing was changed.`
        : `${nameOf(content)} could not be read: ${words}. Nothing was changed.`,
    );
  }
}
