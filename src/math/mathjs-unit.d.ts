declare module "*/mathjs/lib/esm/type/unit/Unit.js" {
  /** Makes the unit class from the arithmetic it is to use; the library types it nowhere. */
  export function createUnitClass<T>(dependencies: Record<string, unknown>): T;
}
