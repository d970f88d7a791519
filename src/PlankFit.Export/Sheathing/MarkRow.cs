using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheathing;

/// <summary>One place to prick before wetting out, of one line.</summary>
/// <param name="FromKeelMm">From the keel's edge along the face, or over the keel where the note says so; null where it is not measured from there. <paramref name="FromChineMm"/> likewise.</param>
internal sealed record MarkRow(
    SheathedLayer Layer,
    SheathedSide Side,
    string Line,
    string Where,
    double? FromKeelMm,
    double? FromChineMm,
    string Note,
    LengthUnit Unit
)
{
    /// <summary>Line by line, each from forward.</summary>
    public static IEnumerable<MarkRow> Of(SheathedLayer layer, SheathedSide side, LengthUnit unit)
    {
        MarkRow Row(string line, string where, double? keel, double? chine, string note) =>
            new(layer, side, line, where, keel, chine, note, unit);
        string At(StationMarks m) => $"station {m.Station}";
        foreach (StationMarks m in side.Marks)
        {
            yield return layer.Spec.Keel is ClothAtKeel.PastCentreLine
                ? Row(
                    "trim at the keel",
                    At(m),
                    m.TrimAtKeelMm,
                    null,
                    m.TrimAtKeelMm - m.KeelHalfMm is > 0.01 and var past
                        ? $"over the keel: {LengthText.ForPaper(past, unit)} past the centre line"
                        : "over the keel: on the centre line"
                )
                : Row(
                    "trim at the keel",
                    At(m),
                    -m.TrimAtKeelMm,
                    m.GirthMm + m.TrimAtKeelMm,
                    "out over the bottom"
                );
        }

        if (layer.Spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 })
        {
            foreach (StationMarks m in side.Marks)
            {
                double from = (2 * m.KeelHalfMm) - m.TrimAtKeelMm;
                yield return Row(
                    "edge of the other side",
                    At(m),
                    Math.Abs(from),
                    null,
                    from >= 0
                        ? "over the keel: the cloth of the other side is trimmed there"
                        : "out over the bottom: the cloth of the other side is trimmed there"
                );
            }
        }

        if (side.Marks.FirstOrDefault() is { TrimAtChineMm: > 0 and var round })
        {
            yield return Row("trim round the chine", "all along", null, round, "past the chine");
        }

        foreach (
            (string edge, double mm) in new[]
            {
                ("transom", layer.Spec.RoundTransomMm),
                ("stem", layer.Spec.RoundStemMm),
            }
        )
        {
            if (mm > 0)
            {
                yield return Row(
                    $"trim round the {edge}",
                    "all along",
                    null,
                    null,
                    $"{LengthText.ForPaper(mm, unit)} past its edge"
                );
            }
        }

        yield return Row(
            "cross on the first line",
            side.Cross.At.Words(unit),
            side.Cross.FromKeelMm,
            side.Cross.FromChineMm,
            "the cross on the cloth lies on it"
        );
        foreach (
            IGrouping<
                (ClothMarkKind Kind, string What),
                (StationMarks At, ClothMark Mark)
            > line in side
                .Marks.SelectMany(m => m.Lines.Select(l => (At: m, Mark: l)))
                .GroupBy(l => (l.Mark.Kind, l.Mark.What))
                .OrderBy(g => g.Key.Kind)
        )
        {
            foreach ((StationMarks at, ClothMark mark) in line)
            {
                yield return Row(
                    mark.What,
                    At(at),
                    mark.FromKeelMm,
                    mark.FromChineMm,
                    SheathingWords.Kind(mark)
                );
            }
        }

        foreach (JoinAcross join in side.JoinsAcross)
        {
            if (join.AtKeel is { } keel)
            {
                yield return Row(
                    $"join {join.Number}",
                    keel.Words(unit),
                    0,
                    null,
                    "where its edge on top meets the keel's edge"
                );
            }

            if (join.AtChine is { } chine)
            {
                yield return Row(
                    $"join {join.Number}",
                    chine.Words(unit),
                    null,
                    0,
                    "where it meets the chine"
                );
            }
        }
    }
}
