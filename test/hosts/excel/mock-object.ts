import { OfficeMockObject } from "office-addin-mock";

/** An error as office.js throws it. */
export class RichApiError extends Error {
  override readonly name = "RichApi.Error";
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

export type Fields = Record<string, unknown>;
export type Setters = Record<string, (value: unknown) => void>;
/** What the mock gives for a property that was not loaded, or not yet synced. */
const UNREADABLE = /^Error, /;

/** The mock as office.js behaves: throws on a read too early, a property that is not there and a write nobody takes. */
export function strict(mock: OfficeMockObject, members: Fields, setters: Setters): Fields {
  return new Proxy(mock, {
    get(_, property) {
      if (typeof property === "symbol" || property === "then") return undefined;
      if (property in members) return members[property];
      const value: unknown = mock[property];
      if (value === undefined) throw new Error(`the mocked Excel has no ${property}`);
      if (typeof value === "string" && UNREADABLE.test(value)) throw new RichApiError("PropertyNotLoaded", `${property}: ${value}`);
      if (value instanceof OfficeMockObject) return strict(value, {}, {});
      return typeof value === "function" ? value.bind(mock) : value;
    },
    set(_, property, value) {
      const setter = setters[String(property)];
      if (!setter) throw new Error(`the mocked Excel does not let ${String(property)} be written`);
      setter(value);
      return true;
    },
  }) as unknown as Fields;
}
