export function play(): void {}
