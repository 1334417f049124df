import type { Connector } from '../../Connector';

/** An overhaul whose engine has meter readings to derive hours from, or of a unit that has. */
export interface MeterOverhaul {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  readonly unit: string;
  readonly date: string;
  readonly engine: string;
  readonly site: string | null;
  readonly bank: string | null;
  /** Reading of the engine meter, h. */
  readonly engineHours: number | null;
  /** Its unit hours are to be derived. */
  readonly isDerived: boolean;
  /** A row of installations.csv says where the unit was on that day. */
  readonly isPlaced: boolean;
  readonly remarks: string | null;
  /** Cells that wait for the overhaul's hours. */
  readonly readings: number;
  readonly remarksColumn: string;
  readonly hoursColumn: string;
}

const overhaulsSql = `
  WITH derived AS (SELECT unit, engine FROM overhauls WHERE unit_hours IS NULL AND engine_hours IS NOT NULL AND engine IS NOT NULL),
  counted AS (SELECT overhaul, count(*) AS readings FROM readings GROUP BY overhaul),
  headers AS (SELECT file, column_name, min(header) AS header FROM cell_reasons WHERE line IS NULL GROUP BY ALL)
  SELECT o.id::INTEGER AS id, o.file, o.line::INTEGER AS line, o.unit, CAST(o.date AS VARCHAR) AS date, o.engine, o.site, o.bank,
    o.engine_hours::DOUBLE AS engine_hours, (o.unit_hours IS NULL AND o.engine_hours IS NOT NULL)::INTEGER AS is_derived,
    EXISTS (SELECT 1 FROM installations i WHERE i.unit = o.unit AND i.engine = o.engine AND i.from_date <= o.date AND coalesce(i.to_date, o.date) >= o.date)::INTEGER AS is_placed,
    o.remarks, coalesce(c.readings, 0)::INTEGER AS readings, coalesce(r.header, 'remarks') AS remarks_column, coalesce(h.header, 'engine_hours') AS hours_column
  FROM overhauls o LEFT JOIN counted c USING (overhaul)
  LEFT JOIN headers r ON r.file = o.file AND r.column_name = 'remarks' LEFT JOIN headers h ON h.file = o.file AND h.column_name = 'engine_hours'
  WHERE o.engine IS NOT NULL AND (o.engine IN (SELECT engine FROM derived) OR o.unit IN (SELECT unit FROM derived))
  ORDER BY o.date, o.id`;

/** Overhauls of the engines and units whose hours are to be derived, in order of date; none if there are none to derive. */
export async function meterOverhauls(connector: Connector): Promise<readonly MeterOverhaul[]> {
  const text = (value: unknown) => (value === null ? null : String(value));
  return (await connector.query(overhaulsSql)).map((row) => ({
    id: Number(row.id),
    file: String(row.file),
    line: Number(row.line),
    unit: String(row.unit),
    date: String(row.date),
    engine: String(row.engine),
    site: text(row.site),
    bank: text(row.bank),
    engineHours: row.engine_hours === null ? null : Number(row.engine_hours),
    isDerived: row.is_derived === 1,
    isPlaced: row.is_placed === 1,
    remarks: text(row.remarks),
    readings: Number(row.readings),
    remarksColumn: String(row.remarks_column),
    hoursColumn: String(row.hours_column),
  }));
}

/** Names of all engines in the records. */
export async function engineNames(connector: Connector): Promise<readonly string[]> {
  const rows = await connector.query(
    'SELECT DISTINCT engine FROM (SELECT engine FROM overhauls UNION ALL SELECT engine FROM installations UNION ALL SELECT engine FROM events) WHERE engine IS NOT NULL ORDER BY 1',
  );
  return rows.map((row) => String(row.engine));
}

/** Whether two overhauls were on one engine: its name, and its site where both tell it. */
export function isSameEngine(
  one: Pick<MeterOverhaul, 'engine' | 'site'>,
  other: Pick<MeterOverhaul, 'engine' | 'site'>,
): boolean {
  return one.engine === other.engine && (one.site === null || other.site === null || one.site === other.site);
}

/** Whether two overhauls were in one position. */
export function isSamePosition(one: MeterOverhaul, other: MeterOverhaul): boolean {
  return isSameEngine(one, other) && one.bank === other.bank;
}

/** Cells whose hours are to be derived among the overhauls. */
export function cellsOf(overhauls: readonly MeterOverhaul[]): number {
  return overhauls.filter(({ isDerived }) => isDerived).reduce((sum, { readings }) => sum + readings, 0);
}

const figures = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 });

/** Hours as a sentence writes them: '75,900 h'. */
export function hoursText(hours: number): string {
  return `${figures.format(hours)} h`;
}
