import { CELLS } from '../../shared-calc/climate/season.ts';

/** Hours of a record with the cell of the season picture that each belongs to, all in step. */
export interface CellHours {
  cell: Int32Array;
  temperatureC: Float64Array;
  dewPointC: Float64Array;
  settingHpa: Float64Array;
  densityAltitudeM: Float64Array;
}

/** DuckDB's answers in cell order: the median, nine days in ten and the highest, or the days beyond a limit. */
export interface DuckdbSeason {
  /** From density altitudes that it holds already. */
  figures(): Promise<number[][]>;
  /** Density altitude computed anew for another elevation. */
  figuresAt(elevationM: number): Promise<number[][]>;
  beyond(limitM: number): Promise<number[]>;
  close(): void;
}

/**
 * Density altitude of moist air in plain SQL, from the published relations: station pressure by the ISA's own setting
 * (ICAO Doc 7488/3), vapour pressure over water with its enhancement (WMO-No. 8, 2018), and the height at which the
 * standard atmosphere below 11 km has that density.
 */
const densityAltitude = (elevationM: number) => `
  WITH pressed AS (
    SELECT cell, t, d, 1013.25 * (pow(q / 1013.25, 0.1902632) - 0.0065 * ${String(elevationM)} / 288.15) ^ (1 / 0.1902632) AS p
    FROM hour),
  weighed AS (
    SELECT cell, (p - (1 - 0.62198) * (1.0016 + 3.15e-6 * p - 0.074 / p) * 6.112 * exp(17.62 * d / (243.12 + d)))
      * 100 / 287.05287 / (t + 273.15) AS density FROM pressed)
  SELECT cell, 288.15 / 0.0065 * (1 - pow(density / 1.225, 1 / (1 / 0.1902632 - 1))) AS da FROM weighed`;

/** null, said in one line, where its binding does not load on this system. */
export async function duckdbSeason(hours: CellHours): Promise<DuckdbSeason | null> {
  const client = await import('@duckdb/node-api').catch((error: unknown) => {
    console.log(
      `DuckDB is not at hand, the comparison with it is skipped: ${String(error).split('\n')[0] ?? ''}`,
    );
    return null;
  });
  if (client === null) return null;
  const { DOUBLE, SMALLINT, DuckDBDataChunk, DuckDBInstance } = client;
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  await connection.run('CREATE TABLE hour (cell SMALLINT, t DOUBLE, d DOUBLE, q DOUBLE, da DOUBLE)');
  const appender = await connection.createAppender('hour');
  const columns = [hours.cell, hours.temperatureC, hours.dewPointC, hours.settingHpa, hours.densityAltitudeM];
  const types = [SMALLINT, DOUBLE, DOUBLE, DOUBLE, DOUBLE];
  const atOnce = 2048;
  for (let from = 0; from < hours.cell.length; from += atOnce) {
    const chunk = DuckDBDataChunk.create(types);
    chunk.setColumns(columns.map((column) => [...column.subarray(from, from + atOnce)]));
    appender.appendDataChunk(chunk);
  }
  appender.closeSync();
  const rows = async (sql: string) => (await connection.runAndReadAll(sql)).getRows();
  // quantile_cont interpolates between the two places around (n - 1) q: type R-7, as the season picture has it.
  const figures = async (from: string) =>
    (
      await rows(
        `SELECT cell, quantile_cont(da, [0.5, 0.9]), max(da), count(*) FROM ${from} GROUP BY cell ORDER BY cell`,
      )
    ).map(([, quantiles, highest]) => [...(quantiles as { items: number[] }).items, Number(highest)]);
  return {
    figures: () => figures('hour'),
    figuresAt: (elevationM) => figures(`(${densityAltitude(elevationM)})`),
    async beyond(limitM) {
      const counted = await rows(
        `SELECT cell, count(*), count(*) FILTER (da > ${String(limitM)}) FROM hour GROUP BY cell`,
      );
      const found = new Array<number>(CELLS).fill(0);
      for (const [cell, , beyond] of counted) found[Number(cell)] = Number(beyond);
      return found;
    },
    close() {
      connection.closeSync();
      instance.closeSync();
    },
  };
}
