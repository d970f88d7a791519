using PlankFit.Export.Words;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Export.Timber;

/// <summary>What lists, sheets and the terminal say of the timber, worded once for all of them.</summary>
public static class TimberWords
{
    private const double NewtonsPerKg = 9.80665;
    private const double KgPerLb = 0.45359237;
    private const double KgM3PerLbFt3 = 16.01846337396014;

    public static string Of(BendWay way) =>
        way switch
        {
            BendWay.Cold => "cold",
            BendWay.SoakOrSteam => "soak or steam",
            BendWay.LaminateThinner => "laminate thinner",
            _ => "refuse",
        };

    /// <summary>What to do, for a plank whose verdict is not simply cold; empty for one that is.</summary>
    public static string ToDo(PlankTimber plank, double thicknessMm, LengthUnit unit)
    {
        string laminated = plank.Bend.Laminations is { } n
            ? $"{n} laminations of {Lamination(thicknessMm / n, unit)} would bend cold"
            : "";
        return plank.Bend.Way switch
        {
            BendWay.SoakOrSteam =>
                "Soak or steam it to form, leave it on the form until it is dry below 12 %, and meter it before glue"
                    + (laminated.Length > 0 ? $"; or {laminated}" : "")
                    + ".",
            BendWay.LaminateThinner or BendWay.Refuse =>
                $"{RefusedBend.ToDo}{(laminated.Length > 0 ? "; " + laminated : "")}.",
            _ => "",
        };
    }

    /// <summary>A lamination's thickness to 1/10 mm or 1/32 in.</summary>
    public static string Lamination(double mm, LengthUnit unit) =>
        LengthText.FormatExact(mm, LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit);

    /// <summary>The widest plank for a curvature, rounded down to 5 mm or half an inch; any beyond five metres.</summary>
    public static string Widest(double? mm, LengthUnit unit)
    {
        double step = LengthUnits.IsMetric(unit) ? 5 : LengthUnits.MmPerInch / 2;
        return mm is { } w and < 5000
            ? PlankWords.Small(Math.Floor((w / step) + 1e-9) * step, unit)
            : "any";
    }

    /// <summary>Whether straight stock may be sprung sideways to the plank's seams; a dash where it closes of itself.</summary>
    public static string PulledIn(Plank plank, PlankTimber timber) =>
        plank.StraightEdges
            ? "-"
            : timber.Bend.EdgeSet?.MayBeForced switch
            {
                true => "yes",
                false => "no: cut to the line",
                null => "-",
            };

    /// <summary>0.042 kg, 1.4 kg, 42 kg; 3.2 lb.</summary>
    public static string Weight(double kg, LengthUnit unit) =>
        $"{WeightNumber(kg, unit)} {WeightUnit(unit)}";

    public static string WeightUnit(LengthUnit unit) => LengthUnits.IsMetric(unit) ? "kg" : "lb";

    public static string WeightNumber(double kg, LengthUnit unit)
    {
        double value = LengthUnits.IsMetric(unit) ? kg : kg / KgPerLb;
        // Boards of one wood differ by a tenth and more: two figures, and none of what is there is called nought.
        return value is > 0 and < 0.0005
            ? "under 0.001"
            : NumberText.Padded(
                value,
                value switch
                {
                    >= 9.95 or 0 => 0,
                    >= 0.95 => 1,
                    >= 0.095 => 2,
                    _ => 3,
                }
            );
    }

    /// <summary>538 kg/m³; 33.6 lb a cubic foot.</summary>
    public static string Density(double kgM3, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Trimmed(kgM3, 0)} kg/m³"
            : $"{NumberText.Trimmed(kgM3 / KgM3PerLbFt3, 1)} lb a cubic foot";

    /// <summary>A force as the weight that would give it, to two figures, since it is an estimate: 22 kg; 48 lb.</summary>
    public static string Force(double newtons, LengthUnit unit)
    {
        double value = newtons / NewtonsPerKg / (LengthUnits.IsMetric(unit) ? 1 : KgPerLb);
        double step = value >= 100 ? 10 : 1;
        return value is > 0 and < 0.5
            ? $"under 1 {WeightUnit(unit)}"
            : $"{NumberText.Trimmed(Math.Round(value / step) * step, 0)} {WeightUnit(unit)}";
    }

    /// <summary>A movement with its direction: +1.2 mm grows, -0.4 mm shrinks; 1/32" in feet and inches.</summary>
    public static string Movement(double mm, LengthUnit unit) =>
        (mm > 0 ? "+" : "")
        + LengthText.FormatExact(mm, LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit);

    /// <summary>A strain to two figures: 0.45 %.</summary>
    public static string Strain(double strain)
    {
        double percent = 100 * strain;
        int decimals = percent > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(percent)), 0, 6) : 0;
        return NumberText.Trimmed(percent, decimals) + " %";
    }

    public static string Percent(double percent) => NumberText.Trimmed(percent, 1) + " %";

    public static string Of(SourceTag tag) =>
        tag switch
        {
            SourceTag.Read => "read",
            SourceTag.SecondHand => "second hand",
            SourceTag.Memory => "MEMORY",
            SourceTag.Derived => "worked out",
            _ => "the job",
        };

    /// <summary>What a card says of the wood; nothing where none is named.</summary>
    public static IEnumerable<string> OnCard(BottomPlan plan, Plank plank)
    {
        if (Found(plan, plank) is not var (layer, timber))
        {
            yield break;
        }

        string weight = timber.Weight is { } w ? $", {Weight(w.Kg, plan.Job.Units)}" : "";
        string used = timber.Bend.StrainIndex is { } index
            ? $"; strain {PlankWords.StrainUsed(index)} of the cold limit"
            : "";
        // What must not be forgotten first: where room is short the last lines go.
        if (timber.Bend.Way == BendWay.SoakOrSteam)
        {
            yield return "Dry below 12 %, meter, then glue.";
        }

        if (timber.Bend.Laminations is { } n)
        {
            yield return $"Cold if laminated: {n} of {Lamination(Thickness(plan, plank) / n, plan.Job.Units)}.";
        }

        yield return $"{layer.Species.Title}{weight}{used}.";
    }

    /// <summary>The same in a few words, for a row of the list.</summary>
    public static IEnumerable<string> InList(BottomPlan plan, Plank plank)
    {
        if (Found(plan, plank) is var (layer, timber))
        {
            yield return timber.Weight is { } w
                ? $"{layer.Species.Title}, {Weight(w.Kg, plan.Job.Units)}."
                : $"{layer.Species.Title}.";
        }
    }

    /// <summary>The wood of a plank; null where none is named.</summary>
    internal static (LayerTimber Layer, PlankTimber Plank)? Found(BottomPlan plan, Plank plank) =>
        plan.Timber?.Of(plank.Id) is { } timber
            ? (plan.Timber.Layers.First(l => l.Layer == plank.Layer), timber)
            : null;

    private static double Thickness(BottomPlan plan, Plank plank) =>
        plan.LayerOf(plank.Id).Planks.ThicknessMm;
}
