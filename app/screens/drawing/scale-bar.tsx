/** A bar of 100 mm to lay a ruler to; place in mm of the page. */
export function ScaleBar({ x, y }: { x: number; y: number }) {
  const ticks = Array.from(
    { length: 11 },
    (_, i) => `M${x + 10 * i} ${y}v${i % 5 === 0 ? 4 : 2.5}`,
  );
  return (
    <>
      <path
        d={`M${x} ${y}h100${ticks.join('')}`}
        fill="none"
        stroke="#000"
        stroke-width="0.3"
        data-testid="scale-bar"
      />
      <text x={x} y={y + 9}>
        This bar is 100 mm long. If yours is not, print again at 100 %, not fitted to the page.
      </text>
    </>
  );
}
