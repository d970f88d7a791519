using System.Collections.Immutable;
using PlankFit.Export.Fastenings;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>Where no length that can be had will do nothing is bought, nothing driven and nothing filled; and it is said.</summary>
public sealed class NoLengthTests
{
    private static readonly Lazy<BottomPlan> Launch = new(() => Planned([500]));

    private static BottomPlan Planned(ImmutableArray<double> lengths)
    {
        Job job = GluedLaunch.Plan.Job;
        return GluedLaunch.Of(
            job with
            {
                Fastenings = new(
                    new FasteningSettings
                    {
                        Kind = FasteningKind.StapleThroughStrap,
                        LengthsMm = lengths,
                    },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    45,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
                Structure = job.Structure,
            }
        );
    }

    [Fact]
    public void NothingIsBoughtForThem()
    {
        BottomPlan plan = Launch.Value;
        FasteningPlan made = plan.Fastenings!;
        FasteningTotal[] without = [.. made.Totals.Where(t => t.HasNoLength)],
            bought = [.. made.Totals.Where(t => t.IsToBuy)];
        // Into timber none will do; the staples that pull down between the timbers have lengths of their own.
        Assert.NotEmpty(without);
        Assert.NotEmpty(bought);
        Assert.All(without, t => Assert.Equal(FasteningUse.Backing, t.Use));
        Assert.All(bought, t => Assert.Equal(FasteningUse.PullDown, t.Use));
        Assert.All(
            without,
            t => Assert.Equal((true, 0, 0), (t.Count > 0, t.WithSpare, t.HolesToFill))
        );
        Assert.Equal(
            bought.Sum(t => t.WithSpare),
            plan.Structure!.Bill.Where(r => r.Kind == "fastenings").Sum(r => r.Amount)
        );
        Assert.Equal(bought.Length, FasteningTables.Totals(plan, made).Rows.Length);
        Assert.Contains(
            made.Findings,
            f => f.Message.Contains("none are bought", StringComparison.Ordinal)
        );
        string sheet = string.Join(
            " ",
            FasteningShopping
                .Of(plan, made)
                .SelectMany(d => d.Shapes.OfType<Lettering>())
                .Select(t => t.Text)
        );
        Assert.Contains("NOT AMONG THEM", sheet, StringComparison.Ordinal);
    }

    /// <summary>What is not driven holds no plank: clamps do.</summary>
    [Fact]
    public void WhatIsNotDrivenHoldsNothing()
    {
        BottomPlan plan = Launch.Value;
        PlankTimes[] planks = [.. plan.Glue!.Batches.SelectMany(b => b.Planks)];
        Assert.All(
            planks,
            p =>
                Assert.Equal(
                    plan.Fastenings!.On(p.Id)!.Points.Count(f => f.Use == FasteningUse.PullDown),
                    p.Fastenings
                )
        );
        Assert.Contains(planks, p => p.Fastenings > 0);
        Assert.All(
            plan.Glue.Batches.Where(b => b.Planks.Any(p => p.Id.Layer == 1)),
            b => Assert.True(b.Clamps > 0)
        );
    }
}
