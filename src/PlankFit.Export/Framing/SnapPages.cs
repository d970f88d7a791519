using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>
/// The lines to snap on the cloth, or on the skin below, before a layer of planks hides what lies behind: a drawing of the face laid out by its girths, and every
/// distance from the keel's side and from the chine in a list.
/// </summary>
public static class SnapPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, FramingPlan behind)
    {
        var pages = new List<SheetPage>();
        foreach (SnapFace face in behind.Snaps)
        {
            PlankLayerPlan layer = plan.PlankLayers.First(l => l.Number == face.Layer);
            string sides = face.Sides.Length == 2 ? "both sides" : PlankWords.Of(face.Sides[0]),
                of = $"{sides}, before {SheetWords.Of(layer)} is laid";
            var view = SnapView.Fitting(plan, face);
            pages.Add(
                new(
                    SheetFormat.Wall(plan.Job),
                    new("Lines to snap", of, view.Ratio.ToString(), new(-1, 0), Cautions.Snap),
                    view.Draw
                )
            );
            pages.AddRange(List(plan, face, of).Pages(plan.Job));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static ListSheet List(BottomPlan plan, SnapFace face, string of)
    {
        string unit = SheetWords.Unit(plan.Job.Units);
        return new(
            new("Lines to snap, by tape", of, "no drawing", null, Cautions.Snap),
            [
                "Tape along the face that the planks are laid on, athwart in the plane of the station: from where the keel's side stands on it, or from the chine. A batten through the marks is the centre line.",
                "A place that is no station is taped level from the one named; on the keel's edge and on the chine the tape lies along that edge.",
            ],
            [
                new("line", 0.22, false),
                new("width", 0.09),
                new("sides", 0.1, false),
                new("where", 0.24, false),
                new($"from keel's side, {unit}", 0.12),
                new($"from chine, {unit}", 0.1),
                new("", 0.24, false),
            ],
            [.. SnapRow.Of(plan, face).Select(r => Row(r))]
        )
        {
            About =
            [
                .. SnapRow
                    .Of(plan, face)
                    .Select(r =>
                        PlaceAlong.Of(r.At.XMm, $"{FramingWords.Name(r.Thing)}, {r.At.Where}")
                    ),
            ],
        };
    }

    private static ImmutableArray<string> Row(SnapRow row) =>
        [
            FramingWords.Name(row.Thing),
            LengthText.PaperNumber(row.Thing.WidthMm, row.Unit),
            row.Sides,
            row.At.Where,
            row.At.FromKeelMm is { } keel ? LengthText.PaperNumber(keel, row.Unit) : "",
            row.At.FromChineMm is { } chine ? LengthText.PaperNumber(chine, row.Unit) : "",
            row.Note,
        ];
}
