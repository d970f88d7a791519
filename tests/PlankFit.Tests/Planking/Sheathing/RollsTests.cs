using System.Collections.Immutable;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Which roll is cut: what is on hand first, the shortest that will do; then of what may be bought the cheapest by its length; and never more than a roll has.</summary>
public sealed class RollsTests
{
    private const double Width = 1270;

    /// <summary>Two pieces, a side each, 8.2 m long.</summary>
    private static readonly Lazy<Job> Launch = new(() => Laid(CourseRule.Along));

    /// <summary>Some seven courses a side, across.</summary>
    private static readonly Lazy<Job> Across = new(() => Laid(CourseRule.Across));

    /// <summary>What is paid in all decides: a short roll that does at twice the price of a metre, and a long one where it costs less than the short.</summary>
    [Theory]
    [InlineData(500, 240, 330, 20_000)]
    [InlineData(230, 240, 330, 50_000)]
    [InlineData(500, 340, 330, 30_000)]
    public void WhatIsBoughtIsTheCheapestInAll(int fifty, int twenty, int thirty, double bought)
    {
        CutRoll roll = Assert.Single(
            Rolls(
                Launch.Value,
                new ClothRoll(Width, 50_000) { Price = fifty },
                new ClothRoll(Width, 20_000) { Price = twenty },
                new ClothRoll(Width, 30_000) { Price = thirty }
            ).Rolls
        );
        Assert.Equal((bought, false), (roll.Roll.LengthMm, roll.OnHand));
    }

    [Fact]
    public void TheShortestOnHandGoesFirst()
    {
        CutRoll[] rolls =
        [
            .. Rolls(
                Launch.Value,
                new ClothRoll(Width, 12_000) { Count = 1 },
                new ClothRoll(Width, 9_000) { Count = 1 },
                new ClothRoll(Width, 10_000) { Count = 1 },
                new ClothRoll(Width, 15_000)
            ).Rolls,
        ];
        Assert.Equal([(9_000, true), (10_000, true)], rolls.Select(Which));
    }

    /// <summary>A roll that is narrower by a hand is not cut from, however well its length would do.</summary>
    [Fact]
    public void ANarrowerRollIsNotCut() =>
        Assert.Equal(
            [(50_000, false)],
            Rolls(
                Launch.Value,
                new ClothRoll(Width - 60, 17_000) { Count = 2 },
                new ClothRoll(Width, 50_000)
            )
                .Rolls.Select(Which)
        );

    /// <summary>By hand: as many rolls as it takes, and where one more piece would be a finger's breadth too long for a roll it goes on the next.</summary>
    [Theory]
    [InlineData(15)]
    public void NoRollHoldsMoreThanItsLength(double lacksMm)
    {
        RollPlan all = Rolls(Launch.Value, new ClothRoll(Width, 50_000));
        double both = all.LengthMm,
            one = all.Rolls[0].Pieces.Max(p => p.Piece.LengthMm);
        Held(Launch.Value, 1, 0, new ClothRoll(Width, both + 0.1));
        Held(Launch.Value, 2, 0, new ClothRoll(Width, both - lacksMm));
        Held(Launch.Value, 0, 2, new ClothRoll(Width, one - lacksMm));
        Held(Launch.Value, 1, 1, new ClothRoll(Width, one + 0.1) { Count = 1 });
    }

    /// <summary>Many short pieces, of which more are shared out than all ways are tried of: rolls a little too short for a whole number of them.</summary>
    [Fact]
    public void ManyCoursesKeepToTheirRolls()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        RollPlan all = Rolls(Across.Value, new ClothRoll(Width, 90_000));
        ClothPiece[] pieces = [.. all.Rolls[0].Pieces.Select(p => p.Piece)];
        Assert.True(pieces.Length > 12, $"{pieces.Length} pieces");
        double longest = pieces.Max(p => p.LengthMm);
        foreach (double length in new[] { longest + 0.1, (2 * longest) - 15, 4000, 7000 })
        {
            RollPlan cut = Rolls(Across.Value, new ClothRoll(Width, length));
            Assert.Empty(cut.Missing);
            Laws(cut, pieces.Length);
        }

        // Three and no more on hand: what has no place is missing, and nothing twice.
        RollPlan few = Rolls(Across.Value, new ClothRoll(Width, 4000) { Count = 3 });
        Assert.NotEmpty(few.Missing);
        Assert.Equal(3, few.Rolls.Length);
        Laws(few, pieces.Length);
    }

    private static void Held(Job job, int rolls, int missing, ClothRoll roll)
    {
        RollPlan plan = Rolls(job, roll);
        Assert.Equal((rolls, missing), (plan.Rolls.Length, plan.Missing.Length));
        Laws(plan, 2);
    }

    private static void Laws(RollPlan plan, int pieces)
    {
        Assert.Equal(
            pieces,
            plan.Missing.Concat(plan.Rolls.SelectMany(r => r.Pieces.Select(p => p.Piece)))
                .Select(p => p.Id)
                .Distinct()
                .Count()
        );
        foreach (CutRoll roll in plan.Rolls)
        {
            Assert.NotEmpty(roll.Pieces);
            Assert.True(roll.Pieces.Max(p => p.Outline.Max(q => q.X)) <= roll.Roll.LengthMm + 1e-5);
            Assert.True(roll.UsedMm <= roll.Roll.LengthMm + 1e-5);
            // Less than this is not kept by name.
            Assert.All(
                roll.Offcuts,
                o => Assert.True(Math.Min(o.LengthMm, o.WidthMm) >= 150, $"{o.LengthMm}")
            );
        }
    }

    private static (double, bool) Which(CutRoll roll) => (roll.Roll.LengthMm, roll.OnHand);

    private static RollPlan Rolls(Job job, params ImmutableArray<ClothRoll> rolls) =>
        Assert.Single(
            BottomPlanner
                .Plan(job with { Cloths = [SheathedJobs.Stitched with { Rolls = rolls }] })
                .Plan!.Sheathing!.Rolls
        );

    private static Job Laid(CourseRule rule) =>
        SheathedJobs.Outside(
            SheathedJobs.Bare(DemoPlans.Of("survey-launch").Job),
            s => s with { Courses = rule, FirstAlong = new FirstLine.Straight(0.5, -2) }
        );
}
