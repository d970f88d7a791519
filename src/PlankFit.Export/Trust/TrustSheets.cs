using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Trust;

/// <summary>How sure the planks are, on paper: a map of each layer in grey, then its list with what to scribe and what to leave long.</summary>
public static class TrustSheets
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, TrustPlan trust)
    {
        List<SheetPage> pages = [];
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            pages.Add(TrustMap.Page(plan, layer, trust));
            pages.AddRange(List(plan, layer, trust).Pages(plan.Job));
        }

        if (TrustTables.KeelRows(trust).Any())
        {
            pages.AddRange(Keel(plan, trust).Pages(plan.Job));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static ListSheet List(BottomPlan plan, PlankLayerPlan layer, TrustPlan trust)
    {
        LengthUnit unit = plan.Job.Units;
        LayerTrust sure = trust.Layers.First(l => l.Number == layer.Number);
        string keel = layer.Panel.WordOf(PanelEdge.Lower),
            chine = layer.Panel.WordOf(PanelEdge.Upper);
        string Out(double? mm) => mm is { } m ? "±" + PlusMinus.Number(m, unit) : "-";
        string More(double? mm) => mm is { } m ? PlusMinus.Number(m, unit) : "-";
        (ListColumn Column, Func<SureRow, string> Read)[] columns =
        [
            (new("plank", 11), r => r.Plank.Id.ToString()),
            (new("net length", 15), r => LengthText.PaperNumber(r.Plank.NetLengthMm, unit)),
            (new("length", 11), r => Out(r.Trust.LengthMm ?? r.Trust.InPlaceMm)),
            (new("inboard end from its middle", 13), r => Out(r.Trust.InboardMm)),
            (new("outboard end from its middle", 13), r => Out(r.Trust.OutboardMm)),
            (new("angles", 10), r => TrustWords.Angle(r.Trust)),
            (new("to scribe, one in 20 short", 14), r => More(r.Trust.OneInTwentyMm)),
            (new("to scribe, none short", 14), r => More(r.Trust.NoneShortMm)),
            (new("its ends", 44, false), r => TrustWords.ToDo(r.Plank, r.Trust, unit)),
        ];
        return new(
            new(
                "How sure each plank is",
                $"starboard, and port alike, {SheetWords.Of(layer)}",
                SheetWords.Unit(unit),
                null,
                Cautions.Overview
            ),
            [.. Intro(plan, layer, sure, keel, chine)],
            [.. columns.Select(c => c.Column)],
            [
                .. TrustTables
                    .Rows(plan, trust)
                    .Where(r => r.Layer == layer)
                    .Select(r => columns.Select(c => c.Read(r)).ToImmutableArray()),
            ]
        );
    }

    private static ListSheet Keel(BottomPlan plan, TrustPlan trust)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            new(
                "How sure the keel's half-widths are",
                "both sides alike",
                SheetWords.Unit(unit),
                null,
                Cautions.Overview
            ),
            [
                $"How far the half-width of each keel layer may be out either way at its outer face, {TrustWords.Often}: as the planks want it, or as its line says.",
            ],
            [
                new("keel layer", 30, false),
                new("station", 12, false),
                new("half-width", 15),
                new("may be out by", 15),
            ],
            [
                .. TrustTables
                    .KeelRows(trust)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Layer,
                            r.Station,
                            LengthText.PaperNumber(r.Mm, unit),
                            "±" + PlusMinus.Number(r.WithinMm, unit)
                        )
                    ),
            ]
        )
        {
            About =
            [
                .. TrustTables.KeelRows(trust).Select(r => PlaceAlong.Station(plan.Job, r.Station)),
            ],
        };
    }

    private static IEnumerable<string> Intro(
        BottomPlan plan,
        PlankLayerPlan layer,
        LayerTrust sure,
        string keel,
        string chine
    )
    {
        LengthUnit unit = plan.Job.Units;
        yield return $"How far each figure may be out either way, {TrustWords.Often}: {(plan.Taped?.Tables is null ? "on the table alone, before anything is taped" : "by the table and what was taped, of the side on which it is less sure")}. The master is laid by its two seams' marks along {keel} and {chine}, as its card and the check before sawing have them, and every other plank edge to edge from it; laid by its angle instead, the planks are far less sure.";
        yield return $"To scribe: extra length at one end, so that of such planks one in 20 comes short, or none of the {sure.Planks.Count(p => !p.InPlace)} of a side. Where a plank fits at both ends and the job names no allowance it has {LengthText.ForPaper(PlankEnd.UsualAllowanceMm, unit)}.";
        yield return $"Each end is told from the plank's middle: out at the keel by what the keel is out, at the chine by what the chine is, and what belongs to neither is shared; both together are the length. Planks share their errors: neighbours are wrong together, planks five apart hardly.";
    }
}
