using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>A plank is the one of a card as long as nobody could saw the difference: a tenth of a millimetre of a size or a place, a tenth of a degree.</summary>
public sealed class ShapeMarkTests
{
    private static readonly Plank Plank = DemoPlans
        .Of("survey-launch")
        .PlankLayers.First()
        .Starboard[5];

    [Theory]
    [InlineData(0.08, true)]
    [InlineData(0.12, false)]
    [InlineData(-0.12, false)]
    public void ATenthIsSeen(double by, bool same)
    {
        ImmutableArray<double> card = ShapeMark.Of(Plank);
        Assert.True(ShapeMark.IsOf(Plank, card));
        Assert.Equal(same, Is(Sized(z => z with { KeelAngleDegrees = z.KeelAngleDegrees + by })));
        Assert.Equal(same, Is(Moved(new(by, 0, 0))));
        Assert.Equal(same, Is(Moved(new(0, by, 0))));
        Assert.Equal(same, Is(Moved(new(0, 0, by))));
        for (int i = 0; i < card.Length; i++)
        {
            Assert.Equal(same, ShapeMark.IsOf(Plank, card.SetItem(i, card[i] + by)));
        }

        // The mean width of it.
        Assert.Equal(same, Is(Sized(z => z with { AreaMm2 = z.AreaMm2 + (by * z.NetLengthMm) })));

        bool Is(Plank now) => ShapeMark.IsOf(now, card);

        static Plank Moved(Vec3 by) =>
            Plank with
            {
                Form = Plank.Form with
                {
                    Shape = Plank.Form.Shape with
                    {
                        Outline = Plank.Outline.SetItem(0, Plank.Outline[0] + by),
                    },
                },
            };

        static Plank Sized(Func<PlankSizes, PlankSizes> with) =>
            Plank with
            {
                Form = Plank.Form with { Sizes = with(Plank.Form.Sizes) },
            };
    }

    /// <summary>What another way of marking wrote is of no plank.</summary>
    [Fact]
    public void AnotherNumberOfFiguresIsNone() =>
        Assert.False(ShapeMark.IsOf(Plank, ShapeMark.Of(Plank)[..^1]));
}
