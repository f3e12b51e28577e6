export const dialog = {
  allParts: 'All parts',
  allPartsUnpriced: (unpriced: number) => `All parts, ${unpriced} of them without a price`,
  heading: 'Parts and prices',
  lead: (list: string, invented: string) =>
    `${list}. ${invented} An empty field goes back to the list’s own.`,
  empty: {
    heading: 'Nothing to price yet',
    lead: (scheme: string) =>
      `Once duct is drawn in ${scheme}, every part of the run stands here with its quantity, its price and its amount.`,
  },
  parts: 'Parts',
  part: 'Part',
  quantity: 'In the run',
  price: 'Price',
  amount: 'Amount',
  priceRange: 'A price',
  yours: 'yours',
  example: 'example',
  none: 'none',
  stock: 'In lengths of',
  stockOf: (part: string) => `Stock length, ${part}`,
  stockRange: 'A stock length',
  per: {
    m: (units: System) => (units === 'imperial' ? 'a foot' : 'a metre'),
    m2: (units: System) => (units === 'imperial' ? 'a square foot' : 'a square metre'),
    L: (units: System) => (units === 'imperial' ? 'a gallon' : 'a litre'),
    piece: (_: System) => 'each',
  },
};

type System = 'imperial' | 'metric';
