using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Export.Nest;

/// <summary>A cut where a fault begins or ends: its number stands beside it in sound wood, with a line to it that is not drawn over the fault.</summary>
public sealed class NumberAtAFaultTests
{
    private static readonly Box Board = new(0, 0, 192, 42),
        Fault = new(80, 0, 94, 42);

    [Theory]
    [InlineData(94, 94)]
    [InlineData(80, 80)]
    // Across the fault's corner, as where a slanting end begins at it.
    [InlineData(94, 110)]
    public void ItsNumberIsBesideIt(double low, double high)
    {
        var pad = new SheetCanvas();
        var marks = new StripMarks(pad, Board, Board with { Top = 48.5 });
        marks.Fault(Fault);
        SawCut cut = SawCut.Straight(CutKind.Crosscut, new(low, 0), new(high, 42), 3) with
        {
            Number = 12,
        };
        marks.Cut(cut, [cut.From, cut.To], numbered: true);
        marks.Numbers([cut], 1);
        Assert.Empty(marks.WithoutNumber);
        CircleShape ring = Assert.Single(
            pad.Shapes.OfType<CircleShape>(),
            c => c.Fill == 1 && c.RadiusMm > 1
        );
        Assert.False(
            new Box(
                ring.Centre.X - ring.RadiusMm,
                ring.Centre.Y - ring.RadiusMm,
                ring.Centre.X + ring.RadiusMm,
                ring.Centre.Y + ring.RadiusMm
            ).Overlaps(Fault)
        );
        double from = Strip.Off(cut, ring.Centre);
        Assert.True(from < 15, $"{from} mm from its cut");
        foreach (
            Polyline line in pad
                .Shapes.OfType<Polyline>()
                .Where(l => Math.Abs(l.Points[0].ChordTo(ring.Centre) - ring.RadiusMm) < 1e-9)
        )
        {
            Assert.Null(Segments.Clip(line.Points[0], line.Points[^1], Fault.Within(0.01)));
        }
    }

    /// <summary>Where nothing but the fault is beside it, there is no number, and that is told.</summary>
    [Fact]
    public void NoNumberStandsOnAFault()
    {
        var marks = new StripMarks(new(), Board, Board);
        marks.Fault(Board);
        SawCut cut = SawCut.Straight(CutKind.Crosscut, new(94, 0), new(94, 42), 3) with
        {
            Number = 12,
        };
        marks.Cut(cut, [cut.From, cut.To], numbered: true);
        marks.Numbers([cut], 3);
        Assert.Equal([12], marks.WithoutNumber);
    }
}
