using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Joints;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>Rows of planks by chance, with the places, the stock and the rules that a yard could have.</summary>
internal sealed record ChanceRow(
    ImmutableArray<PlankRoom> Planks,
    JointStock Stock,
    ImmutableArray<JointRule> Rules
)
{
    /// <param name="mostPlanks">Of a row.</param>
    public static Gen<ChanceRow> Gen(int mostPlanks) =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Int[3, mostPlanks],
                CsCheck.Gen.Int[9, 24].Select(k => 100.0 * k),
                CsCheck.Gen.Int[10, 45].Select(k => 0.01 * k),
                CsCheck.Gen.Int[0, 2].Select(k => new[] { 75.0, 100, 160 }[k]),
                CsCheck.Gen.Int[105, 330].Select(k => 0.01 * k),
                CsCheck.Gen.Int[0, 2],
                Rule,
                CsCheck.Gen.Int[0, 1 << 30]
            )
            .Select(
                (planks, longest, shortest, grid, length, kind, rules, seed) =>
                    Of(planks, longest, shortest, grid, length, kind, rules, new Random(seed))
            );

    private static Gen<ImmutableArray<JointRule>> Rule =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Int[0, 900].Select(k => (double)k),
                CsCheck.Gen.Int[0, 500].Select(k => (double)k),
                CsCheck.Gen.Int[0, 3],
                CsCheck.Gen.Int[20, 200].Select(k => (double)k)
            )
            .Select(
                (next, one, count, near) =>
                    new JointRule[]
                    {
                        new(JointRuleKind.NextPlank, next, null, "test"),
                        new(JointRuleKind.OneBetween, one < 150 ? 0 : one, null, "test"),
                        new(JointRuleKind.SameBacking, near < 60 ? null : near, count, "test"),
                    }
                        .Where(r => !r.IsNone)
                        .ToImmutableArray()
            );

    private static ChanceRow Of(
        int planks,
        double longest,
        double shortest,
        double grid,
        double length,
        int kind,
        ImmutableArray<JointRule> rules,
        Random chance
    )
    {
        // 0: scarfs, a place each grid; 1: butts on blocks with some places taken; 2: butts on timbers with names.
        double overlap = kind == 0 ? 72 : 0,
            from = 0,
            zero = 0,
            long_ = length * longest;
        JointStock stock = new(
            longest,
            shortest * longest,
            kind == 0 ? JointKind.Scarf : JointKind.Butt,
            8,
            new(ButtCut.Square, [], null, 0),
            grid,
            []
        );
        ImmutableArray<PlankRoom>.Builder rooms = ImmutableArray.CreateBuilder<PlankRoom>();
        for (int i = 0; i < planks; i++)
        {
            long_ = Math.Clamp(
                long_ + (chance.NextDouble() - 0.5) * 300,
                0.7 * longest,
                3.4 * longest
            );
            from += (chance.NextDouble() - 0.5) * 200;
            zero += (chance.NextDouble() - 0.5) * 60;
            bool divided = long_ > longest;
            ImmutableArray<JointPlace>.Builder places = ImmutableArray.CreateBuilder<JointPlace>();
            for (double at = from + grid; divided && at < from + long_; at += grid)
            {
                int timber = (int)Math.Floor((at + 30 * i) / 420);
                bool named = kind == 2 && (at + 30 * i) - (420 * timber) < 110;
                if (kind == 1 ? chance.NextDouble() < 0.15 : kind == 2 && !named)
                {
                    continue;
                }

                places.Add(
                    new(
                        at,
                        90,
                        at + (overlap / 2),
                        at - (overlap / 2),
                        kind == 0 ? null
                            : named ? $"timber {timber}"
                            : "block",
                        named
                    )
                    {
                        AlongMm = at + zero,
                        XMm = (0.7 * at) + (105 * i),
                    }
                );
            }

            rooms.Add(new(places.ToImmutable(), from, from + long_, divided));
        }

        return new(rooms.ToImmutable(), stock, rules);
    }
}
