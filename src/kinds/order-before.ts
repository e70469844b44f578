import type { KindOperation, OrderRule } from './model.ts';

/**
 * Operations with everything that comes before each, also by way of others: a sheet may lack the one in
 * between. A way is as strong as its weakest rule, and has the reason of that rule; of several ways the
 * strongest counts. In working order. `not` are, by operation, those that it need not follow, on no way.
 */
export function orderBefore(
  operations: ReadonlyMap<string, KindOperation>,
  not: ReadonlyMap<string, ReadonlySet<string>> = new Map(),
): ReadonlyMap<string, KindOperation> {
  const known = new Map<string, ReadonlyMap<string, OrderRule>>();
  const visit = (name: string, on: ReadonlySet<string>): ReadonlyMap<string, OrderRule> => {
    const before = known.get(name);
    if (before) return before;
    const all = new Map<string, OrderRule>();
    const dropped = not.get(name);
    const add = (rule: OrderRule): void => {
      if (dropped?.has(rule.name)) return;
      const there = all.get(rule.name);
      if (there === undefined || isWeaker(there, rule)) all.set(rule.name, rule);
    };
    for (const rule of operations.get(name)?.after ?? []) {
      // A circle is told of where the rules are read; here it must only not run for ever.
      if (on.has(rule.name) || dropped?.has(rule.name)) continue;
      add(rule);
      for (const far of visit(rule.name, new Set(on).add(rule.name)).values())
        add(isWeaker(rule, far) ? { ...rule, name: far.name } : far);
    }
    known.set(name, all);
    return all;
  };
  const names = [...operations.keys()];
  return new Map(
    [...operations].map(([name, operation]) => {
      const all = visit(name, new Set([name]));
      const before = names.flatMap((other) => {
        const rule = all.get(other);
        return rule === undefined ? [] : [[other, rule] as const];
      });
      return [name, { ...operation, before: new Map(before) }];
    }),
  );
}

function isWeaker(one: OrderRule, two: OrderRule): boolean {
  return one.strength === 'usual' && two.strength !== 'usual';
}
