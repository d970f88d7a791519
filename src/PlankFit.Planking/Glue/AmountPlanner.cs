using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>How much of each mix goes where, by areas of the plan itself.</summary>
internal sealed record AmountPlanner(
    GlueSpec Spec,
    Planked Planked,
    FramingPlan Framing,
    SheathingPlan? Sheathed
)
{
    private const double Mm2PerM2 = 1e6;

    public static readonly Side[] BothSides = [Side.Starboard, Side.Port];

    public ImmutableArray<AmountLine> Lines()
    {
        ImmutableArray<AmountLine>.Builder lines = ImmutableArray.CreateBuilder<AmountLine>();
        for (int i = 0; i < Planked.Layers.Length; i++)
        {
            lines.AddRange(
                Planked.Layers[i] switch
                {
                    PlankLayerPlan planks => OfPlanks(planks, i),
                    _ => OfCloth(i),
                }
            );
        }

        lines.AddRange(Last());
        return lines.ToImmutable();
    }

    /// <summary>Of both faces in contact, mm², of one plank: its own face on the layer below, or on what lies behind.</summary>
    public double FaceMm2(Plank plank, int layer) =>
        layer > 0
            ? plank.AreaMm2
            : Framing
                .On(plank.Id)
                .Where(c => c.Of.Kind != FramingKind.Open)
                .Sum(c => AreaOf(c.Cover));

    /// <summary>Of a plank's seams, mm²: half of each, since both planks at a seam are wetted.</summary>
    public static double SeamMm2(Plank plank, PlankLayerPlan layer) =>
        new[] { plank.ForwardEdge, plank.AfterEdge }
            .Where(e => e.Neighbour is not null)
            .Sum(e => e.SeamLengthMm / 2 * layer.Planks.ThicknessMm);

    /// <summary>Usual kg of mix for one plank, waste among it.</summary>
    public double PlankKg(Mix mix, Plank plank, PlankLayerPlan layer, int at) =>
        mix.WithWaste(
            (FaceMm2(plank, at) + SeamMm2(plank, layer))
                * Spec.FilmMm.Usual
                / Mm2PerM2
                * Spec.MixKgPerLitre(mix, GlueUse.BetweenLayers)
        );

    /// <summary>Usual kg for a square metre of a cloth: what it drinks, and the wood under it; waste among it.</summary>
    public double ClothKgPerM2(Mix mix, ClothSpec cloth, bool onWood) =>
        mix.WithWaste(ResinOf(cloth).Usual + (onWood ? (Spec.PrimingGsm?.Usual ?? 0) / 1000 : 0));

    /// <summary>Of that the part that primes the wood.</summary>
    public double PrimingPart(Mix mix, ClothSpec cloth, bool onWood) =>
        1 - (ClothKgPerM2(mix, cloth, false) / ClothKgPerM2(mix, cloth, onWood));

    /// <summary>A cloth as it lies; null where the job does not say what it is cut from.</summary>
    public SheathedLayer? ClothOf(string layer) =>
        Sheathed?.Layers.FirstOrDefault(l => l.Name == layer);

    public bool OnWood(int at) => at > 0 && Planked.Layers[at - 1] is PlankLayerPlan;

    private IEnumerable<AmountLine> OfPlanks(PlankLayerPlan layer, int at)
    {
        if (Spec.BetweenLayers is not { } mix)
        {
            yield break;
        }

        Plank[] planks = [.. BothSides.SelectMany(s => layer.On(s))];
        double faces = planks.Sum(p => FaceMm2(p, at)),
            seams = planks.Sum(p => SeamMm2(p, layer));
        double dense = Spec.MixKgPerLitre(mix, GlueUse.BetweenLayers);
        string film =
            $"film of {Film()}, {AmountText.Density(dense, Planked.Job.Units)} is {PerArea(1000 * dense * Spec.FilmMm)} of resin and hardener: lift one plank and measure";
        if (faces > 0)
        {
            yield return Line(
                layer.Planks.Name,
                at > 0 ? GlueUse.BetweenLayers : GlueUse.Behind,
                mix,
                faces,
                (dense * faces / Mm2PerM2) * Spec.FilmMm,
                film
            );
        }

        yield return Line(
            layer.Planks.Name,
            GlueUse.Seams,
            mix,
            seams,
            (dense * seams / Mm2PerM2) * Spec.FilmMm,
            film
        );
    }

    private IEnumerable<AmountLine> OfCloth(int at)
    {
        string name = Planked.Layers[at].Spec.Name;
        if (Spec.Resin is not { } mix || ClothOf(name) is not { } cloth)
        {
            yield break;
        }

        double area = cloth.LaidMm2;
        if (OnWood(at) && Spec.PrimingGsm is { } priming)
        {
            yield return Line(
                name,
                GlueUse.Priming,
                mix,
                area,
                (area / Mm2PerM2 / 1000) * priming,
                $"{PerArea(priming)}: the job's"
            );
        }

        yield return Line(
            name,
            GlueUse.WettingOut,
            mix,
            area,
            (area / Mm2PerM2) * ResinOf(cloth.Cloth),
            $"{Range(new(cloth.Cloth.GlassContent.Least, cloth.Cloth.GlassContent.Usual, cloth.Cloth.GlassContent.Most), 2)} of it glass by mass, {AmountText.Gsm(cloth.Cloth.MassGsm, Planked.Job.Units)} dry: weigh what the first course takes"
        );
    }

    /// <summary>Over all layers, and along things.</summary>
    private IEnumerable<AmountLine> Last()
    {
        int last = Planked.Layers.Length - 1;
        if (Spec.Resin is { } resin && Planked.Layers[last] is ClothLayerPlan outer)
        {
            string name = outer.Cloth.Name;
            double area = ClothOf(name)?.LaidMm2 ?? 0;
            if (area > 0 && Spec.WeaveGsm is { } weave)
            {
                yield return Line(
                    name,
                    GlueUse.Weave,
                    resin,
                    area,
                    (area / Mm2PerM2 / 1000) * weave,
                    $"{PerArea(weave)} in all coats: the job's"
                );
            }
        }

        if (Spec.BetweenLayers is not { } mix)
        {
            yield break;
        }

        foreach (FilletSpec fillet in Spec.Fillets)
        {
            double litres = fillet.Section.AreaMm2 * fillet.LengthMm / 1e6;
            yield return Line(
                fillet.Along,
                GlueUse.Fillet,
                mix,
                0,
                Estimate.Exactly(litres * Spec.MixKgPerLitre(mix, GlueUse.Fillet)),
                $"hollow of {LengthText.Fine(fillet.Section.RadiusMm, Planked.Job.Units)}, {NumberText.Trimmed(fillet.Section.AngleDegrees, 0)} degrees open: {OffVolume(mix, GlueUse.Fillet)}"
            );
        }

        if (Spec.Fairing is { } fairing)
        {
            double area =
                fairing.Part * BothSides.Sum(s => Planked.PlankLayers.Last().Of(s).AreaMm2);
            yield return Line(
                "outside",
                GlueUse.Fairing,
                mix,
                area,
                Estimate.Exactly(
                    area / Mm2PerM2 * fairing.DepthMm * Spec.MixKgPerLitre(mix, GlueUse.Fairing)
                ),
                $"{LengthText.Fine(fairing.DepthMm, Planked.Job.Units)} deep on {NumberText.Trimmed(100 * fairing.Part, 0)} % of it: {OffVolume(mix, GlueUse.Fairing)}"
            );
        }
    }

    /// <summary>How much of what is put on is filler.</summary>
    private string OffVolume(Mix mix, GlueUse use) =>
        1 - (Spec.MixKgPerLitre(mix, use) / mix.Ratio.KgPerLitre) is > 0 and var part
            ? $"{NumberText.Trimmed(100 * part, 0)} % of its volume is filler"
            : "the filler's own volume is not taken off";

    /// <summary>; 60 (40 to 90) g of silica to a kg: the job's.</summary>
    private string Thickened(GlueUse use)
    {
        LengthUnit unit = Planked.Job.Units;
        return string.Concat(
            Spec.FillersOf(use)
                .Select(f =>
                    $"; {Range(1 / AmountText.GramsPerKgPer(unit) * f.GramsPerKg, LengthUnits.IsMetric(unit) ? 0 : 1)} {AmountText.GramsPerKgUnit(f.Name, unit)}: the job's"
                )
        );
    }

    private AmountLine Line(
        string where,
        GlueUse use,
        Mix mix,
        double areaMm2,
        Estimate kg,
        string rate
    )
    {
        Estimate put = (1 + mix.Waste) * kg;
        return new(where, use, mix, areaMm2, put, rate + Thickened(use))
        {
            Fillers = [.. Spec.FillersOf(use).Select(f => new FillerAmount(f, f.To(put)))],
        };
    }

    /// <summary>kg of resin and hardener that a square metre of the cloth drinks; the most glass asks for the least.</summary>
    private static Estimate ResinOf(ClothSpec cloth)
    {
        double threads = (cloth.MassGsm - cloth.MatGsm) / 1000,
            mat = cloth.MatGsm / 1000;
        double Of(Func<PartRange, double> end) =>
            Drinks(threads, end(cloth.GlassContent)) + Drinks(mat, end(cloth.MatGlassContent));
        return new(Of(r => r.Most), Of(r => r.Usual), Of(r => r.Least));

        static double Drinks(double kg, double content) =>
            kg > 0 ? GlassInResin.ResinKgPerM2(kg, content) : 0;
    }

    private static double AreaOf(ImmutableArray<Geometry.Primitives.Vec2> outline)
    {
        double twice = 0;
        for (int i = 0; i < outline.Length; i++)
        {
            twice += outline[i].Cross(outline[(i + 1) % outline.Length]);
        }

        return Math.Abs(twice) / 2;
    }

    private static string Range(Estimate e, int decimals) =>
        e.Least == e.Most
            ? NumberText.Trimmed(e.Usual, decimals)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{NumberText.Trimmed(e.Usual, decimals)} ({NumberText.Trimmed(e.Least, decimals)} to {NumberText.Trimmed(e.Most, decimals)})"
            );

    /// <summary>200 (100 to 300) g/m²; 5.9 (2.9 to 8.8) oz/sq yd.</summary>
    private string PerArea(Estimate gsm)
    {
        LengthUnit unit = Planked.Job.Units;
        return $"{Range(1 / AmountText.GsmPer(unit) * gsm, LengthUnits.IsMetric(unit) ? 0 : 1)} {AmountText.GsmUnit(unit)}";
    }

    /// <summary>0.3 (0.2 to 0.5) mm; 12 (8 to 20) thousandths of an inch.</summary>
    private string Film() =>
        LengthUnits.IsMetric(Planked.Job.Units)
            ? $"{Range(Spec.FilmMm, 2)} mm"
            : $"{Range(1000 / LengthUnits.MmPerInch * Spec.FilmMm, 0)} thousandths of an inch";
}
