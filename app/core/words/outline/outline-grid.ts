import type { OutlineGrid } from '../../outline/outline-grid.ts';
import { formatCount } from '../numbers.ts';

/** 'Squares of 95 mm on the sheet: 4 across, 3 down; the last row is 9 tenths of a square high.' */
export function gridInWords({ sideMm, across, down, lastRow }: OutlineGrid): string {
  const side = sideMm >= 20 ? Math.round(sideMm) : Math.round(sideMm * 10) / 10;
  const words = `Squares of ${side} mm on the sheet: ${across} across, ${down} down`;
  const tenths = Math.max(1, Math.min(9, Math.round(lastRow * 10)));
  if (lastRow === 1) return `${words}.`;
  return `${words}; the last row is ${formatCount(tenths, 'tenth')} of a square high.`;
}
