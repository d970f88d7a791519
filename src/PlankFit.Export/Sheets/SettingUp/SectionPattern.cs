using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// One frame in true size, starboard half seen from aft: the line to saw to, the table's line, the planking's inner face, the centre line and the table's base.
/// Coordinates are half-breadth and height, mm, as in the table.
/// </summary>
public static class SectionPattern
{
    private const double TextMm = 10;
    private const double ThinningMm = 0.001;

    public static Drawing Of(BottomPlan plan, FrameSection frame)
    {
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        void Line(string layer, Pen pen, ImmutableArray<Vec2> points) =>
            shapes.Add(new Polyline(layer, pen, Thinning.Open(points, ThinningMm), false));

        Line(Layers.Cut, Pens.Cut, frame.FrameLine);
        Line(Layers.Net, Pens.Net, frame.Table);
        if (plan.Job.SettingUp!.RibbandMm > 0)
        {
            Line(Layers.Marks, Pens.Inner, frame.InnerFace);
        }

        double top = frame.Table.Max(p => p.Y) + 60,
            right = frame.Table.Max(p => p.X) + 30,
            low = Math.Min(0, frame.FrameLine.Min(p => p.Y));
        Line(Layers.Marks, Pens.Station, [new(0, low), new(0, top)]);
        Line(Layers.Marks, Pens.Station, [new(0, 0), new(right, 0)]);
        foreach (FramePlace place in frame.Places)
        {
            shapes.Add(
                new CircleShape(
                    Layers.Marks,
                    Pens.Tick,
                    new(place.HalfBreadthMm, place.HeightMm),
                    2
                )
            );
        }

        shapes.Add(
            new Lettering(
                Layers.Text,
                Pen.Thin,
                new(10, top - TextMm),
                $"{(frame.Name.StartsWith("x ", StringComparison.Ordinal) ? "frame at" : "station")} {frame.Name}, starboard from aft, rev {plan.Job.Revision}",
                TextMm,
                Anchor.BaselineLeft
            )
        );
        shapes.Add(
            new Lettering(
                Layers.Text,
                Pen.Thin,
                new(right - 20, 3),
                "base",
                TextMm / 2,
                Anchor.BaselineRight
            )
        );
        return new(
            $"{plan.Job.Name}: section {frame.Name}, full size",
            right,
            top - low,
            shapes.ToImmutable()
        );
    }

    /// <summary>The frame's file name: letters and figures alone.</summary>
    public static string FileName(FrameSection frame) =>
        "section-"
        + string.Concat(frame.Name.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-');
}
