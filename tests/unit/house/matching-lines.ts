import type { SourceFile } from './source-files.ts';
import { withoutComments } from './without-comments.ts';

/** Every line of code (comments aside) that matches one of the patterns, as path:line: text. */
export function matchingLines(files: readonly SourceFile[], patterns: readonly RegExp[]): string[] {
  return files.flatMap(({ path, text }) =>
    withoutComments(text)
      .split('\n')
      .flatMap((line, index) =>
        patterns.some((pattern) => pattern.test(line))
          ? [`${path}:${index + 1}: ${line.trim()}`]
          : [],
      ),
  );
}
