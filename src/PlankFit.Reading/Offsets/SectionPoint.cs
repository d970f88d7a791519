using System.Collections.Immutable;
using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.Offsets;

/// <summary>A point of a line at a station as the body plan shows it, mm.</summary>
internal readonly record struct SectionPoint(double OutMm, double UpMm)
{
    /// <summary>Null where the line has no values there.</summary>
    public static SectionPoint? Of(OffsetLine line, int station) =>
        line.HalfBreadthsMm[station] is { } y && line.HeightsMm[station] is { } z
            ? new(y, z)
            : null;

    /// <summary>The section of a panel from its lower edge to its upper one, through those lines between that have values there; empty where an edge has none.</summary>
    public static ImmutableArray<SectionPoint> Section(OffsetTable table, Panel panel, int station)
    {
        SectionPoint?[] points =
        [
            .. panel.Lines.Select(l => table.Find(l) is { } line ? Of(line, station) : null),
        ];
        return points[0] is null || points[^1] is null ? [] : [.. points.OfType<SectionPoint>()];
    }

    public double To(SectionPoint other) =>
        Math.Sqrt(Math.Pow(other.OutMm - OutMm, 2) + Math.Pow(other.UpMm - UpMm, 2));

    /// <summary>The part of the way to another, 0 to 1.</summary>
    public SectionPoint Towards(SectionPoint other, double part) =>
        new(OutMm + (part * (other.OutMm - OutMm)), UpMm + (part * (other.UpMm - UpMm)));

    /// <summary>How far along the straight way from one point to another this one lies abreast, mm; negative before it begins.</summary>
    public double Along(SectionPoint from, SectionPoint to) =>
        from.To(to) is > 0 and var length
            ? (
                ((OutMm - from.OutMm) * (to.OutMm - from.OutMm))
                + ((UpMm - from.UpMm) * (to.UpMm - from.UpMm))
            ) / length
            : 0;

    /// <summary>The nearest point of a section.</summary>
    public SectionPoint Nearest(ImmutableArray<SectionPoint> section)
    {
        SectionPoint self = this;
        return section
            .Zip(
                section.Skip(1),
                (a, b) =>
                    a.To(b) is > 0 and var length
                        ? a.Towards(b, Math.Clamp(self.Along(a, b) / length, 0, 1))
                        : a
            )
            .MinBy(q => q.To(self));
    }
}
