using System.Collections.Immutable;
using PlankFit.Export.Cards;
using PlankFit.Export.Framing;
using PlankFit.Export.Patterns;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What lies behind on patterns, cards, lists and the sheet of lines to snap.</summary>
public sealed class FramingSheetsTests
{
    public static TheoryData<LengthUnit> Units =>
        [LengthUnit.Millimetre, LengthUnit.FeetInchesEighths];

    private static BottomPlan Plan(LengthUnit unit)
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        return plan with { Job = plan.Job with { Units = unit } };
    }

    [Theory]
    [MemberData(nameof(Units))]
    public void SheetsAreLegible(LengthUnit unit)
    {
        BottomPlan plan = Plan(unit);
        string[] faults =
        [
            .. SnapPages
                .Of(plan, plan.Framing)
                .Concat(FramingListPages.Of(plan))
                .SelectMany(d => SheetCheck.Faults(d)),
        ];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Take(12)));
    }

    [Theory]
    [MemberData(nameof(Units))]
    public void CardsHoldAllThatIsSaidOfThem(LengthUnit unit)
    {
        BottomPlan plan = Plan(unit);
        ImmutableArray<Drawing> pages = PlankCardPages.Of(OnPlanks.Of(plan));
        string[] faults = [.. pages.SelectMany(d => SheetCheck.Faults(d))];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Take(12)));
        Assert.Contains(
            pages.SelectMany(p => p.Shapes.OfType<Lettering>()),
            t => t.Text.Contains("Behind it")
        );
    }

    /// <summary>Nothing is lost: the drawn lines and the gaps left for words cover every centre, and lie on it.</summary>
    [Fact]
    public void PatternsCarryEveryCentreOnItsOwnLayerWithItsName()
    {
        BottomPlan plan = Plan(LengthUnit.Millimetre);
        int named = 0,
            long_ = 0;
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)))
        {
            Drawing pattern = CuttingPattern.Of(OnPlanks.Of(plan), plank);
            Polyline[] lines =
            [
                .. pattern.Shapes.OfType<Polyline>().Where(l => l.Layer == "behind"),
            ];
            foreach (FramingCrossing c in plan.Framing.On(plank.Id).Where(c => c.Centre.Length > 1))
            {
                foreach (Vec2 end in new[] { c.Centre[0], c.Centre[^1] })
                {
                    bool word = pattern.Shapes.OfType<Lettering>().Any(t => t.At.ChordTo(end) < 60);
                    Assert.True(
                        word || lines.Any(l => l.Points.Any(p => p.ChordTo(end) < 0.02)),
                        $"{plank.Id}: {c.Of.Name} is not drawn to its end"
                    );
                }

                if (c.Centre[0].ChordTo(c.Centre[^1]) > 40)
                {
                    long_++;
                    named += pattern
                        .Shapes.OfType<Lettering>()
                        .Any(t =>
                            t.Layer == "behind"
                            && t.Text.Contains(c.Of.Name, StringComparison.Ordinal)
                        )
                        ? 1
                        : 0;
                }
            }
        }

        Assert.True(long_ > 500, $"{long_} crossings");
        Assert.Equal(long_, named);
    }

    /// <summary>A job that names nothing behind has nothing of it on its patterns.</summary>
    [Fact]
    public void WithoutThingsBehindNothingIsDrawn()
    {
        BottomPlan plan = DemoPlans.Of("tender");
        Assert.Same(FramingPlan.None, plan.Framing);
        Assert.DoesNotContain(
            plan.PlankLayers.SelectMany(l => l.Starboard)
                .SelectMany(p => CuttingPattern.Of(OnPlanks.Of(plan), p).Shapes),
            s => s.Layer == "behind"
        );
    }
}
