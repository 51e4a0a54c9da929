/** The small part of it that is used; the package has no types of its own. */
declare module 'perspective-transform' {
  export default function perspectiveTransform(
    from: readonly number[],
    to: readonly number[],
  ): { transform(x: number, y: number): [number, number]; readonly coeffs: readonly number[] };
}
