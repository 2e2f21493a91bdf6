export function peakBytes(): number;
