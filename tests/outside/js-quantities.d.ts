declare module "js-quantities" {
  interface Amount {
    readonly scalar: number;
    to(unit: string): Amount;
  }
  export default function Qty(amount: number, unit: string): Amount;
}
