using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Numbers on the views stand on the planks that they name, and say what the fixture's closed form says.</summary>
public sealed class ViewNumbersTests
{
    private static readonly Prism Hull = new(KeelHalfBreadthMm: 40);

    [Fact]
    public void NumbersInPlanStandOnTheirPlanks()
    {
        BottomPlan plan = PrismaticPlan.Build(Hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Drawing view = BottomPlanView.Of(plan, layer);
            // The drawing's edges are known: x from 0 to 6000, y from one chine to the other; the table's slant at this layer.
            Vec3 chine = Hull.Point(0, Hull.ChineMm, layer.NeutralOffsetMm);
            (Vec2 low, Vec2 high) = Extent(view);
            double scale = (high.X - low.X) / Hull.LengthMm;
            Assert.Equal(2 * chine.Y * scale, high.Y - low.Y, 1e-6);
            int found = 0;
            foreach (
                Lettering text in view
                    .Shapes.OfType<Lettering>()
                    .Where(l => IsNumberIn(l, low, high))
            )
            {
                double x = (text.At.X - low.X) / scale,
                    athwart = ((low.Y + high.Y) / 2 - text.At.Y) / scale;
                int number = int.Parse(text.Text, CultureInfo.InvariantCulture);
                // Below the middle is starboard; either way the plank is the one whose seams it lies between, in closed form.
                double slant = Slant(Math.Abs(athwart), layer.NeutralOffsetMm),
                    fore = PrismChecks.SeamX(Hull, layer, number - 1, slant),
                    aft = PrismChecks.SeamX(Hull, layer, number, slant);
                Assert.True(
                    (number == 1 || x > fore) && (number == layer.Starboard.Length || x < aft),
                    $"{layer.Number}: {text.Text} at {x:0}, {athwart:0}: its plank is from {fore:0} to {aft:0}"
                );
                found++;
            }

            Assert.InRange(found, (2 * layer.Starboard.Length) - 4, 2 * layer.Starboard.Length);
        }
    }

    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void EveryPlankIsNumberedOnceASide(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Lettering[] inPlan = [.. Centred(BottomPlanView.Of(plan, layer))],
                expanded = [.. Centred(ShellExpansion.Of(plan, layer))];
            foreach (Plank plank in layer.Starboard)
            {
                string number = plank.Number.ToString(CultureInfo.InvariantCulture);
                Assert.Equal(2, inPlan.Count(l => l.Text == number));
                Assert.Single(expanded, l => l.Text == number);
            }
        }
    }

    [Fact]
    public void SizesInPlanAreThoseOfThePrism()
    {
        BottomPlan plan = PrismaticPlan.Build();
        string[] texts =
        [
            .. BottomPlanView
                .Of(plan, plan.PlankLayers.First())
                .Shapes.OfType<Lettering>()
                .Select(l => l.Text),
        ];
        // From the hand-computed plank: 1504.9746 - 13.5 tan 20 sqrt 2 + 150 + 2.3163 + 25 sqrt 2 = 1685.6974 mm, to saw 1686.
        Assert.Contains("1686 × 150", texts);
    }

    private static IEnumerable<Lettering> Centred(Drawing view) =>
        view
            .Shapes.OfType<Lettering>()
            .Where(l => l.Anchor == Anchor.MiddleCentre && l.TurnDegrees == 0);

    private static bool IsNumberIn(Lettering text, Vec2 low, Vec2 high) =>
        text.Anchor == Anchor.MiddleCentre
        && int.TryParse(text.Text, CultureInfo.InvariantCulture, out _)
        && text.At.X > low.X
        && text.At.X < high.X
        && text.At.Y > low.Y
        && text.At.Y < high.Y;

    /// <summary>The extent of the planks drawn.</summary>
    private static (Vec2 Low, Vec2 High) Extent(Drawing view)
    {
        ImmutableArray<Vec2> all =
        [
            .. view
                .Shapes.OfType<Polyline>()
                .Where(p => p is { Layer: "hull", Closed: true })
                .SelectMany(p => p.Points),
        ];
        return (
            new(all.Min(p => p.X), all.Min(p => p.Y)),
            new(all.Max(p => p.X), all.Max(p => p.Y))
        );
    }

    /// <summary>Distance along the slant of a point of the layer so far from the middle line: y = a cos + offset sin.</summary>
    private static double Slant(double y, double offsetMm) =>
        (y - (offsetMm * Math.Sin(Hull.Deadrise))) / Math.Cos(Hull.Deadrise);
}
