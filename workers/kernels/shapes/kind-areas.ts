/** Pixels per group, 256 groups; `group` says which group a kind of the map belongs to. */
export function areasBy(map: Uint8Array, group: (kind: number) => number): Uint32Array {
  const perKind = new Uint32Array(256);
  for (let i = 0; i < map.length; i++) {
    const kind = map[i] as number;
    perKind[kind] = (perKind[kind] as number) + 1;
  }
  const areas = new Uint32Array(256);
  for (let kind = 0; kind < 256; kind++) {
    const area = perKind[kind] as number;
    if (area > 0) areas[group(kind)] = (areas[group(kind)] as number) + area;
  }
  return areas;
}
