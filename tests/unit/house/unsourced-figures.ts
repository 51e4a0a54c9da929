import { posix } from 'node:path';
import { parseSync } from 'vite';
import { importLines } from './import-lines.ts';
import type { SourceFile } from './source-files.ts';

/** A node of the syntax tree (ESTree with types), read by its field names. */
interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value;

const nodesIn = (value: unknown): Node[] =>
  Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [];

const childrenOf = (node: Node): Node[] => Object.values(node).flatMap(nodesIn);

/** Of counts and of how exactly two numbers agree nobody asks a source. */
const counting = ['toHaveLength', 'toHaveBeenCalledTimes', 'toHaveCount'];
const plain = [0, 1, 2, 100];

/** Numbers written in a piece of code; the digits that `toBeCloseTo` compares are none. */
function figuresIn(node: Node): number[] {
  if (node.type === 'Literal')
    return typeof node.value === 'number' && !plain.includes(node.value) ? [node.value] : [];
  return childrenOf(node).flatMap(figuresIn);
}

/** The name of the method that a call asks for: `toBe` in `expect(x).not.toBe(3)`; '' for another call. */
function methodOf({ type, callee }: Node): string {
  const [asked] = type === 'CallExpression' ? nodesIn(callee) : [];
  const [property] = asked?.type === 'MemberExpression' ? nodesIn(asked.property) : [];
  return String(property?.name ?? '');
}

/** Figures that a test holds its subject to: in the arguments of matchers and in the rows of `each`. */
function checkedFigures(node: Node): number[] {
  const method = methodOf(node);
  const args = nodesIn(node.arguments);
  const isMatcher = /^to[A-Z]/.test(method) && !counting.includes(method);
  const own = isMatcher ? args.slice(0, 1) : method === 'each' ? args : [];
  return [...own.flatMap(figuresIn), ...childrenOf(node).flatMap(checkedFigures)];
}

/** Ways to say where a figure comes from, or honestly that it comes from nowhere. */
const sources: readonly RegExp[] = [
  /\(own\b|project's own|\bown (figures?|limits?|computation|estimate|measure)/i,
  /\bfrom memory\b|\bcommon practice\b/i,
  /\b(ISO|ASTM|CIE|IEC|CIPA|ANSI|WMO|IAPWS|W3C|WCAG|RFC|CODATA)\b[^\n]{0,12}\d/,
  /\brules? R\d|\(R\d/i, // R1 to R21, each with its source in app/core/plan/rules/rules.md
  /\p{Lu}[\p{L}'’-]{2,}[^\n]{0,160}\b(1[789]\d|20[0-3])\d\b/u, // an author (or a publisher) and a year
];

/** Libraries that reckon the same independently: what is held against them needs no other source. */
const peers = ['culori', 'culori/fn', 'sharp', 'simple-statistics', 'spectral.js'];

interface Comment {
  readonly value: string;
  readonly start: number;
  readonly end: number;
}

/** What is said about the tests, a line each: their titles, and the comments, those of following lines as one. */
function wordsOf(text: string, comments: readonly Comment[]): string {
  const titles = [...text.matchAll(/\b(?:describe|test|it)(?:\.\w+)*\(\s*(['"`])(.*?)\1/g)];
  const said = comments.map(({ value, end }, i) => {
    const next = comments[i + 1];
    const goesOn = next && text.slice(end, next.start).trim() === '';
    return `${value.replace(/\s*\n[\s*]*/g, ' ')}${goesOn ? ' ' : '\n'}`;
  });
  return [said.join(''), ...titles.map(([, , title]) => title)].join('\n');
}

/**
 * The figures that a file of tests holds its subject to, where it names no source for any: neither in words (comments,
 * titles) nor by a fixture that `attributed` (ATTRIBUTION.md of the fixtures) tells the source of, nor by a peer.
 */
export function unsourcedFigures(file: SourceFile, attributed: string): number[] {
  const { program, comments, errors } = parseSync(file.path, file.text);
  if (errors.length > 0) throw new Error(`${file.path}: ${errors[0]?.message}`);
  const figures = nodesIn(program.body).flatMap(checkedFigures);
  if (figures.length === 0) return [];
  const words = wordsOf(file.text, comments);
  if (sources.some((source) => source.test(words))) return [];
  const isSourced = importLines(file).some(
    ({ target }) =>
      peers.includes(target) ||
      (target.includes('fixtures/') && attributed.includes(posix.basename(target))),
  );
  return isSourced ? [] : figures;
}
