import { parseSync } from 'vite';
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

/** Codes of two words or more that types name, by what they tell apart; none of them is shown as it is but trade words. */
export const codes: ReadonlySet<string> = new Set([
  // What is done, what the paper is like, in what order.
  ...['wet on dry', 'dry brush', 'negative painting', 'opaque white', 'graded wash'],
  ...['water drops', 'bone dry', 'almost dry', 'ground first', 'subject first'],
  ...['first go', 'second go', 'in one go', 'once more'],
  ...['line lost', 'ground soft', 'subject lighter', 'ground lighter'],
  ...['on its block', 'as it is', 'taped or clipped', 'taped all round'],
  // Sides of the sheet; how sure it is where a sheet lies; how a lightness came out.
  ...['lower right', 'lower left', 'upper left', 'upper right'],
  ...['fairly sure', 'not sure', 'slightly …', 'clearly …'],
  // Ways from a mix to the next, and what a scrap has too much of; why a mix is mud; troubles at the easel.
  ...['half a value lighter', 'half a value darker', 'colour lost'],
  ...['more yellow', 'more red', 'more blue', 'more green', 'more …'],
  ...['hard edge', 'lost white', 'too pale', 'too dark', 'mask tore', 'drying too fast'],
  // What a patch lies on, and how evenly.
  ...['bare line', 'two colours'],
  // Stages of a reading, as benches list them; a mark in the table of pigments.
  ...['what stands out', 'bands and families', 'first shapes', 'not listed'],
  // Keywords of PNG chunks (XMP and Exif as they were kept before the format had chunks for them).
  ...['Raw profile type exif', 'Raw profile type APP1', 'Raw profile type xmp'],
  // Keys of taps, of scraps and of cues: compared, never read.
  ...['practise …', 'scrap …', '… dry … …', '… shine … …', '… painted', '… step'],
]);

/** Files whose strings are no sentences: names of paints that are looked up in a box; SVG. */
export const otherStrings: ReadonlySet<string> = new Set([
  'app/core/palette/classic-palettes.ts',
  'app/core/outline/outline-svg.ts',
]);

/** Errors, limits of wishes and names of faults are for developers, or leave by an error. */
const forDevelopers = /^(?:\w*Error|wholeNumber|broken|fault)$/;

/** The words of a string or template that stand in the source itself, blanks for its figures. */
function writtenIn(node: Node): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type !== 'TemplateLiteral') return null;
  const quasis = nodesIn(node.quasis) as (Node & { value: { cooked: string } })[];
  return quasis.map(({ value }) => value.cooked).join('…');
}

/** Two words with a blank between them, or a word beside a figure: something that is said. */
const isSentence = (text: string, isTemplate: boolean): boolean =>
  !codes.has(text) &&
  (/[a-z]{2,}[,;:.]? [a-z]/i.test(text) || (isTemplate && /[a-z]{2,} …|… [a-z]{2,}/i.test(text)));

const isType = ({ type }: Node): boolean =>
  type.startsWith('TS') && !/^TS(As|Satisfies|NonNull)/.test(type);

function sentencesIn(node: Node): string[] {
  if (node.type === 'ImportDeclaration' || isType(node)) return [];
  if (node.type === 'NewExpression' || node.type === 'CallExpression') {
    const callee = node.callee as Node;
    if (callee.type === 'Identifier' && forDevelopers.test(String(callee.name))) return [];
  }
  // Or as the rule and what is at fault: ['R5', 'lifting on dry paper'].
  if (node.type === 'ArrayExpression' && /^R\d+$/.test(String(nodesIn(node.elements)[0]?.value)))
    return [];
  const text = writtenIn(node);
  const own = text !== null && isSentence(text, node.type === 'TemplateLiteral') ? [text] : [];
  return [...own, ...Object.values(node).flatMap(nodesIn).flatMap(sentencesIn)];
}

/** Sentences a file writes by itself: what it says to her should be a code that `core/words` puts into words. */
export const writtenSentences = ({ path, text }: SourceFile): string[] => {
  if (otherStrings.has(path)) return [];
  const { program } = parseSync(path, text, { lang: 'ts' });
  return nodesIn(program.body)
    .flatMap(sentencesIn)
    .map((sentence) => `${path}: ${sentence}`);
};
