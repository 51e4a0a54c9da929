/**
 * Where a page address below the app's own folder leads: undefined for the folder itself (whatever its
 * query), else the same place as a hash route of the shell. The shell's links are relative, so it
 * only works at the folder itself.
 */
export function shellAddress(asked: URL, scope: URL): URL | undefined {
  const rest = asked.pathname.slice(scope.pathname.length);
  if (rest === '' || rest === 'index.html') return undefined;
  const address = new URL(scope);
  address.search = asked.search;
  address.hash = `#/${rest}`;
  return address;
}
