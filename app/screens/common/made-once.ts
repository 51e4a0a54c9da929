/** What is made from something and then kept beside it: asked again, the same answer. */
export function madeOnce<N extends object, M>(make: (needs: N) => M): (needs: N) => M {
  const made = new WeakMap<N, M>();
  return (needs) => {
    const found = made.get(needs) ?? make(needs);
    made.set(needs, found);
    return found;
  };
}
