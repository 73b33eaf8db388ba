declare module "polylabel" {
  /** The place inside a polygon furthest from its rings; an outer ring and holes, each closed. */
  export default function polylabel(
    rings: readonly (readonly (readonly number[])[])[],
    precision?: number,
  ): readonly number[] & { readonly distance: number };
}
