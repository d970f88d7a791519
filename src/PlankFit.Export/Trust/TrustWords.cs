using PlankFit.Export.Words;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Trust;

/// <summary>What cards, sheets and lists say of how sure a plank is. Nothing is told without the condition that it hangs on.</summary>
internal static class TrustWords
{
    /// <summary>On what all of it hangs, and how often it holds.</summary>
    public const string Often = "19 times in 20 if [trust] is right";

    /// <summary>Angles come up to the next half degree, which is what a saw shows.</summary>
    private const double DegreesStep = 0.5;

    /// <summary>In sentences for the plank's card; none for one that is not to be sawn any more.</summary>
    public static IEnumerable<string> OnCard(
        PlankLayerPlan layer,
        Plank plank,
        PlankTrust trust,
        LengthUnit unit
    )
    {
        if (plank.IsFixed)
        {
            yield break;
        }

        if (plank.Kind == PlankKind.Master && ByMarks(layer, plank, unit) is { } marks)
        {
            yield return marks;
        }

        if (trust.InPlace)
        {
            yield return trust.InPlaceMm is { } mm
                ? $"Its length is {PlusMinus.Of(mm, unit)}, {Often}: fit it in place."
                : "How sure its length is cannot be told: fit it in place.";
            yield break;
        }

        string[] ends =
        [
            .. plank
                .Ends.Where(e => e.Cut == EndCut.Fit)
                .Select(e => (End: e, Mm: Of(trust, plank, e, layer)))
                .Where(e => e.Mm is not null)
                .Select(e => $"{e.End.Word} {PlusMinus.Of(e.Mm!.Value, unit)}"),
        ];
        if (ends.Length > 0)
        {
            string length = plank.FitBothEnds
                ? $"; over its length {PlusMinus.Of(trust.LengthMm!.Value, unit)}, {PlusMinus.Plain(trust.NoneShortMm!.Value, unit)} to scribe"
                : "";
            yield return $"Fit at {string.Join(", ", ends)} from its middle{length}, {Often}.";
        }

        if (!plank.FitBothEnds && Short(plank, trust) is { } left)
        {
            yield return $"Leave {left.Word} {More(trust.NoneShortMm!.Value, unit)} long and not {LengthText.ForPaper(left.OverhangMm!.Value, unit)}: its length is {PlusMinus.Of(trust.LengthMm!.Value, unit)}, {Often}.";
        }
    }

    /// <summary>What to do with a plank's ends, in a few words.</summary>
    public static string ToDo(Plank plank, PlankTrust trust, LengthUnit unit) =>
        plank.IsSawn ? "sawn already"
        : plank.IsFitted ? "fitted already"
        : trust.InPlaceMm is { } mm ? $"fit in place, {PlusMinus.Of(mm, unit)}"
        : trust.InPlace ? "fit in place"
        : trust.MayFitBothEnds ? "may be sawn to fit at both ends"
        : $"left long at one end, by {More(trust.NoneShortMm!.Value, unit)} or more";

    /// <summary>How sure an end is from the plank's middle, mm; of a plank that meets two edges at one end that of the end.</summary>
    public static double? Of(PlankTrust trust, Plank plank, PlankEnd end, PlankLayerPlan layer) =>
        EndReading.Of(plank, end, layer.Planks.ThicknessMm).FacesOutboard
            ? trust.OutboardMm
            : trust.InboardMm;

    /// <summary>An angle that the saw is set to, the worse of its ends.</summary>
    public static string Angle(PlankTrust trust)
    {
        double? worst = new[]
        {
            trust.InboardDegrees,
            trust.OutboardDegrees,
            trust.BevelDegrees,
        }.Max();
        return worst is { } degrees
            ? "±"
                + AngleText.ForPaper(
                    Math.Max(1, Math.Ceiling((degrees / DegreesStep) - 1e-6)) * DegreesStep
                )
            : "-";
    }

    /// <summary>The master by its two seams: where each crosses keel and chine.</summary>
    private static string? ByMarks(PlankLayerPlan layer, Plank plank, LengthUnit unit)
    {
        SeamCheck? check = layer.Checks.FirstOrDefault(c => c.PlankId == plank.Id);
        return check is { Forward: { } forward, After: { } after }
            ? $"Lay it by its two seams' marks and not by its angle, from station {forward.Inboard.From}: forward seam {Marks(forward)}, after seam {Marks(after)}."
            : null;
        string Marks(TapedSeam seam) => $"{Mark(seam.Inboard)}, {Mark(seam.Outboard)}";
        string Mark(TapedEnd end) =>
            $"{layer.Panel.WordOf(end.At)} {LengthText.ForPaper(Math.Abs(end.AlongMm), unit)}"
            + (
                end.At is PanelEdge.Lower or PanelEdge.Upper
                    ? end.AlongMm >= 0
                        ? " aft"
                        : " forward"
                    : " from the keel"
            );
    }

    /// <summary>The end that is left long by less than keeps all planks of a side from coming short; null where there is none.</summary>
    private static PlankEnd? Short(Plank plank, PlankTrust trust) =>
        plank
            .Ends.Where(e => e.OverhangMm < trust.NoneShortMm)
            .OrderBy(e => e.OverhangMm)
            .FirstOrDefault();

    /// <summary>As much as is left long: up to the next 5 mm or quarter of an inch.</summary>
    private static string More(double mm, LengthUnit unit)
    {
        double step = LengthUnits.IsMetric(unit) ? 5 : LengthUnits.MmPerInch / 4;
        return LengthText.ForPaper(Math.Ceiling((mm / step) - 1e-6) * step, unit);
    }
}
