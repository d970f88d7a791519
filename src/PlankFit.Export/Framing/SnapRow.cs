using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>A point through which a line is snapped.</summary>
/// <param name="Where">Along which tape: a station's section, or an edge of the bottom.</param>
internal readonly record struct SnapPoint(
    string Where,
    double? FromKeelMm,
    double? FromChineMm,
    double XMm
);

/// <summary>One line of the tables of lines to snap.</summary>
internal sealed record SnapRow(
    int Layer,
    string Sides,
    FramingSpec Thing,
    SnapPoint At,
    string Note,
    LengthUnit Unit
)
{
    public static IEnumerable<SnapRow> Of(BottomPlan plan, SnapFace face)
    {
        LengthUnit unit = plan.Job.Units;
        foreach (SnapMark mark in face.Marks.Where(m => Holds(m.Of, face)))
        {
            yield return new(
                face.Layer,
                FramingWords.Sides(mark.Of, face.Sides),
                mark.Of,
                new(mark.At.Words(unit), mark.FromKeelMm, mark.FromChineMm, mark.XMm),
                What(mark, unit),
                unit
            );
        }

        foreach (SnapAcross across in face.Across.Where(a => Holds(a.Of, face)))
        {
            SnapRow Row(string where, double? keel, double? chine, string what) =>
                new(
                    face.Layer,
                    FramingWords.Sides(across.Of, face.Sides),
                    across.Of,
                    new(where, keel, chine, across.XMm),
                    what,
                    unit
                );
            if (across.AtKeel is { } k)
            {
                yield return Row(k.Words(unit), 0, null, "on the keel's edge");
            }
            else if (across.OutFromMm is { } from)
            {
                yield return Row(
                    Near(plan, face, across.XMm).Words(unit),
                    from,
                    null,
                    "begins here"
                );
            }

            if (across.AtChine is { } c)
            {
                yield return Row(c.Words(unit), null, 0, "on the chine");
            }
            else if (across.OutToMm is { } to)
            {
                yield return Row(Near(plan, face, across.XMm).Words(unit), to, null, "ends here");
            }
        }
    }

    private static FromStation Near(BottomPlan plan, SnapFace face, double x) =>
        FromStation.Of(plan.HullOf(face.Sides[0]).Stations, x);

    private static bool Holds(FramingSpec of, SnapFace face) =>
        of.Only is null || face.Sides.Contains(of.Only.Value);

    private static string What(SnapMark mark, LengthUnit unit) =>
        mark.Is switch
        {
            SnapPlace.Begins => "begins here",
            SnapPlace.Ends => "ends here",
            SnapPlace.Middle =>
                $"middle; {LengthText.ForPaper(mark.Of.LengthMm!.Value, unit)} long, {LengthText.ForPaper(mark.Of.WidthMm, unit)} across",
            _ => "",
        };
}
