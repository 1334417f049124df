import { transfer } from 'comlink';
import type { FleetQuestion } from './FleetQuestions';
import { buffersOf, type PackedRows, rowViews } from './packedRows';
import { haveOneShape, packRows } from './packRows';

/**
 * Lists of rows in answers of which a page shows a few at a time, by their names; 'answer' is the answer itself. An engine a fleet
 * has thousands of rows, and as objects they hold up the thread that takes them over.
 */
const longLists: Readonly<Partial<Record<FleetQuestion, readonly string[]>>> = {
  decisions: ['answer'],
  charts: ['answer'],
  sisters: ['rows', 'startRows', 'units'],
  spares: ['exceedances'],
  report: ['units', 'margins', 'decisions', 'exceedances'],
};

interface PackedAnswer {
  readonly packedAnswer: unknown;
}

/** A list by the shapes of its rows: of which shape each row is, and the rows of each shape. */
interface PackedList {
  readonly shapeOf: Uint8Array;
  readonly packedList: readonly PackedRows[];
}

/** Rows of more shapes are no list to be gone through by column. */
const mostShapes = 4;

/** The answer to a question as it goes to the page: its long lists by column, their memory handed over. */
export function packAnswer(question: unknown, answer: unknown): unknown {
  const names = Object.hasOwn(longLists, String(question)) ? longLists[question as FleetQuestion] : undefined;
  if (names === undefined) return answer;
  const buffers: ArrayBuffer[] = [];
  const pack = (value: unknown, name: string): unknown => {
    if (isPlain(value))
      return Object.fromEntries(Object.entries(value).map(([one, inside]) => [one, pack(inside, one)]));
    if (!Array.isArray(value)) return value;
    const list = names.includes(name) ? packList(value) : null;
    if (list === null) return value.map((one) => pack(one, ''));
    buffers.push(...list.packedList.flatMap(buffersOf));
    return list;
  };
  return transfer({ packedAnswer: pack(answer, 'answer') } satisfies PackedAnswer, buffers);
}

function packList(rows: readonly unknown[]): PackedList | null {
  const shapes = new Map<string, object[]>();
  const shapeOf = new Uint8Array(rows.length);
  for (const [place, row] of rows.entries()) {
    if (typeof row !== 'object' || row === null) return null;
    const name = Object.keys(row).join(' ');
    if (!shapes.has(name)) shapes.set(name, []);
    shapes.get(name)?.push(row);
    shapeOf[place] = [...shapes.keys()].indexOf(name);
    if (shapes.size > mostShapes) return null;
  }
  const lists = [...shapes.values()];
  return lists.every(haveOneShape) ? { shapeOf, packedList: lists.map(packRows) } : null;
}

/**
 * The answer as it was packed; rows of its long lists are views, see rowViews. Those inside an object are made when they are first
 * asked for: of an answer about many series one is shown.
 */
export function unpackAnswer(answer: unknown): unknown {
  return isPlain(answer) && 'packedAnswer' in answer ? unpacked(answer.packedAnswer) : answer;
}

function unpacked(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unpacked);
  if (!isPlain(value)) return value;
  if (isList(value)) return unpackList(value);
  const made: Record<string, unknown> = {};
  for (const [name, one] of Object.entries(value)) {
    if (isPlain(one) && isList(one)) defineOnce(made, name, () => unpackList(one));
    else made[name] = unpacked(one);
  }
  return made;
}

function unpackList({ shapeOf, packedList }: PackedList): readonly object[] {
  const lists = packedList.map((rows) => rowViews(rows).values());
  return Array.from(shapeOf, (shape) => lists[shape]?.next().value as object);
}

/** A property whose value is made when it is first asked for. */
function defineOnce(owner: object, name: string, make: () => unknown): void {
  let made: { readonly value: unknown } | null = null;
  const get = () => {
    made ??= { value: make() };
    return made.value;
  };
  Object.defineProperty(owner, name, { enumerable: true, get });
}

type Plain = Readonly<Record<string, unknown>>;

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

function isList(value: Plain): value is Plain & PackedList {
  return 'packedList' in value;
}
