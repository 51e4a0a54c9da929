import { join } from 'node:path';

/** Where the global set-up builds the two releases of the app that the tests serve. */
export function releaseFolder(release: 'v1' | 'v2'): string {
  return join(import.meta.dirname, '..', '..', '..', 'test-results', 'build', release);
}
