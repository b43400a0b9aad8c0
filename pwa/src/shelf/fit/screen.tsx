export function FitScreen() {
  return null;
}
