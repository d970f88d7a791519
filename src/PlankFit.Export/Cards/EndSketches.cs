using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Cards;

/// <summary>The two small sketches that go with an end: how it leans seen on the outer face, and its bevel in section.</summary>
internal static class EndSketches
{
    private const double StubMm = 11;

    /// <summary>A stub of the plank, outer face up, s to the right, with the cut as it leans and a square line dashed.</summary>
    public static void Lean(SheetCanvas pad, Vec2 middle, PlankEnd end, bool facesOutboard)
    {
        const double Half = 2.5;
        // A sketch: beyond 60 degrees from square the stub would be all end.
        double slope = Math.Clamp(Math.Tan((90 - end.CutDegrees) * Math.PI / 180), -1.7, 1.7),
            stub = facesOutboard ? -StubMm : StubMm;
        Vec2 low = middle + new Vec2(-slope * Half, -Half),
            high = middle + new Vec2(slope * Half, Half);
        pad.Open(
            [new(middle.X + stub, low.Y), low, high, new(middle.X + stub, high.Y)],
            Pens.Outer
        );
        pad.Line(low, high, Pens.Cut);
        pad.Line(middle.X, middle.Y - Half - 1.3, middle.X, middle.Y + Half + 1.3, Pens.Net);
    }

    /// <summary>Section square to the cut, the outer face on top, with a dashed line square to the faces.</summary>
    public static void Bevel(SheetCanvas pad, Vec2 middle, PlankEnd end, bool facesOutboard)
    {
        const double Half = 1.8;
        double lean = Math.Clamp(Math.Tan(end.BevelDegrees * Math.PI / 180), -2, 2) * Half,
            way = facesOutboard ? 1 : -1;
        Vec2 outer = middle + new Vec2(way * lean, Half),
            inner = middle + new Vec2(-way * lean, -Half);
        pad.Closed(
            [
                new(middle.X - (way * StubMm), outer.Y),
                outer,
                inner,
                new(middle.X - (way * StubMm), inner.Y),
            ],
            Pens.Outer,
            fill: 0.88
        );
        pad.Line(outer, inner, Pens.Cut);
        pad.Line(middle.X, middle.Y - Half - 1.3, middle.X, middle.Y + Half + 1.3, Pens.Net);
        pad.Text(
            new(middle.X - (way * (StubMm - 0.5)), middle.Y + Half + 0.8),
            "outer",
            Letters.Small,
            facesOutboard ? Anchor.BaselineLeft : Anchor.BaselineRight
        );
    }
}
