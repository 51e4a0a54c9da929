const pad = (n: number): string => String(n).padStart(2, '0');

/** '7:30', '1:17:00': milliseconds as a clock shows them, rounded up to the second. */
export function clockFace(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours
    ? `${hours}:${pad(minutes)}:${pad(seconds % 60)}`
    : `${minutes}:${pad(seconds % 60)}`;
}
