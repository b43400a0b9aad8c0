export function ShelfScreen() {
  return null;
}
