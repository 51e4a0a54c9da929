import { describe, expect, test } from 'vitest';
import { matchingLines } from './matching-lines.ts';
import { sourceFiles } from './source-files.ts';

const waysToRunText = [
  /\b(inner|outer)HTML\b/,
  /\binsertAdjacentHTML\b/,
  /\bdangerouslySetInnerHTML\b/,
  /\bcreateContextualFragment\b/,
  /\bparseFromString\b/,
  /\bsrcdoc\b/i,
  /\bdocument\.write/,
  /\beval\b/,
  /\bFunction\s*\(/,
  /\bset(Timeout|Interval)\(\s*['"`]/,
  /\bjavascript:/,
];

describe('nothing is rendered as HTML or run as code', () => {
  test('in app/ and workers/', async () => {
    const files = await sourceFiles(['app', 'workers'], ['.ts', '.tsx', '.mjs', '.html', '.svg']);
    expect(matchingLines(files, waysToRunText)).toEqual([]);
  });

  test.each([
    'box.innerHTML = name;',
    'box.outerHTML = name;',
    "box.insertAdjacentHTML('beforeend', name)",
    '<p dangerouslySetInnerHTML={{ __html: name }} />',
    'document.writeln(name)',
    'eval(name)',
    'window["eval"](name)',
    'new Function(name)()',
    "setTimeout('go()', 1)",
  ])('%s would be seen', (text) => {
    expect(matchingLines([{ path: 'app/x.tsx', text }], waysToRunText)).toHaveLength(1);
  });
});
