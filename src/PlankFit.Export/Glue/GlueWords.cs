using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Glue;

/// <summary>What sheets, tables and the terminal say of glue, worded once for all of them.</summary>
public static class GlueWords
{
    /// <summary>What belongs on everything that is mixed by.</summary>
    public const string Caution =
        "A FULL POT HEATS, SMOKES AND CAN BURN: into a shallow tray, outdoors. Epoxy sensitises skin for life: gloves, no bare skin, no solvent on skin. Eyes covered. Dust of "
        + "part-cured resin and of glass: mask, extraction. Shears: away from the hand. Solvent vapour burns: no flame, rags spread flat outdoors. THE PRODUCT'S DATA SHEET PREVAILS.";

    /// <summary>08:35.</summary>
    public static string Hour(double minute)
    {
        int whole = (int)Math.Floor(minute + 1e-6) % (int)DayTemperature.Day;
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60:00}:{whole % 60:00}");
    }

    /// <summary>day 2, 08:35.</summary>
    public static string When(double minute) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"day {(int)Math.Floor((minute + 1e-6) / DayTemperature.Day) + 1}, {Hour(minute)}"
        );

    /// <summary>What the sessions leave out, for whoever reads only them; nothing where they are whole.</summary>
    public static IEnumerable<string> NotPlanned(GluePlan glue) =>
        glue.NotPlanned.IsEmpty
            ? []
            :
            [
                $"NOT ALL IS PLANNED: {string.Join("; ", glue.NotPlanned)} {(glue.NotPlanned.Length == 1 ? "has" : "have")} no session{(glue.Sessions.IsEmpty ? "" : ", and these end before")}. {Why(glue)}Mix nothing before that is settled.",
            ];

    /// <summary>The reason in the words of what was found, which are the same everywhere.</summary>
    private static string Why(GluePlan glue) =>
        glue.StoppedBy is { } why ? $"Why, {why.Where}: {why.Message}. " : "";

    /// <summary>slow epoxy is thinned by 5 %: what is laid with it has no hour here.</summary>
    public static string Thinned(Mix mix) =>
        $"{mix.Name} is THINNED by {NumberText.Trimmed(100 * mix.Thinned, 1)} %, the solvent not among the amounts: {(mix.IsTimed ? "its clocks are those of the thinned mix, as the job says" : "its clocks here are those of the mix unthinned, so that neither what is laid with it nor what comes after has a batch or an hour")}.";

    /// <summary>18.5 C; 65 F where lengths are in feet and inches.</summary>
    public static string Temperature(double celsius, LengthUnit unit) =>
        ShopHeat.Words(celsius, unit);

    /// <summary>How much warmer three degrees are.</summary>
    public static string Warmer(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "3 degrees C warmer" : "5 degrees F warmer";

    /// <summary>12.50 (10.20 to 18.70) kg.</summary>
    public static string Range(Estimate kg, LengthUnit unit)
    {
        string usual = AmountText.Kg(kg.Usual, unit),
            called = usual[usual.LastIndexOf(' ')..];
        return kg.Least == kg.Most
            ? usual
            : $"{Bare(kg.Usual)} ({Bare(kg.Least)} to {Bare(kg.Most)}){called}";

        string Bare(double of) => AmountText.Kg(of, unit)[..^called.Length];
    }

    /// <summary>2 : 1 by volume, 100 : 42.2 by mass.</summary>
    public static string Ratio(MixRatio ratio) =>
        $"{NumberText.Trimmed(ratio.ResinPerHardener, 2)} : 1 by volume, 100 : {NumberText.Padded(ratio.HardenerTo100, 1)} by mass";

    public static string Of(GlueUse use) =>
        use switch
        {
            GlueUse.Priming => "priming the wood",
            GlueUse.WettingOut => "wetting out the cloth",
            GlueUse.BetweenLayers => "glue on the layer below",
            GlueUse.Seams => "glue in the seams",
            GlueUse.Behind => "glue on what lies behind",
            GlueUse.Weave => "filling the weave",
            GlueUse.Fillet => "fillet",
            GlueUse.LeftOver => "left over in the pot",
            _ => "fairing",
        };

    /// <summary>11:41; 11:41, proved; nothing where it was not searched.</summary>
    public static string Searched(GlueSession session) =>
        session.Searched is { } found
            ? $"{Hour(Math.Floor(found.EndsAt))}{(found.Proved ? ", proved" : "")}"
            : "";

    /// <summary>27 planks; cloth; coat.</summary>
    public static string WhatDone(GlueSession session) =>
        session.Use switch
        {
            GlueUse.WettingOut => "cloth",
            GlueUse.Weave => "coat",
            GlueUse.Fairing => "fairing",
            GlueUse.Fillet => "fillet",
            _ => PlanWords.Count(session.Planks, "plank"),
        };

    /// <summary>1 batch; 13 batches.</summary>
    public static string Batches(int number) =>
        NumberText.Trimmed(number, 0) + (number == 1 ? " batch" : " batches");

    /// <summary>S2-07 to 12; port, cloth 2 of 5.</summary>
    public static string What(GlueBatch batch, GlueStage stage)
    {
        string side = PlankWords.Of(batch.Side);
        return batch.Planks.IsEmpty
            ? $"{side}, {Part(stage.Use)} {batch.Course} of {stage.Batches.Count(b => b.Side == batch.Side)}"
            : PlankRuns.Of(batch.Planks.Select(p => p.Id));
    }

    /// <summary>96 spring clamps, 140 on at once; nothing where fastenings hold.</summary>
    /// <param name="clamps">As <see cref="ClampCounts.Of"/> has them.</param>
    public static string HeldBy(GluePlan glue, SessionClamps clamps)
    {
        if (clamps.PutOn == 0)
        {
            return "";
        }

        string put = $"{NumberText.Trimmed(clamps.PutOn, 0)} {glue.Spec.Crew!.ClampsCalled}";
        return clamps.AtOnce > clamps.PutOn
            ? $"{put}, {NumberText.Trimmed(clamps.AtOnce, 0)} on at once"
            : put;
    }

    /// <summary>The most that a plank is held by: with fewer than these to spare a batch has to wait.</summary>
    private static int OnOnePlank(GluePlan glue) =>
        glue
            .Batches.Where(b => !b.Planks.IsEmpty)
            .Select(b => (int)Math.Ceiling((double)b.Clamps / b.Planks.Length))
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>What is meant by <see cref="HeldBy"/>, for the sheet; nothing where fastenings hold everything.</summary>
    public static IEnumerable<string> Clamps(GluePlan glue)
    {
        int most = glue
            .Sessions.Select(ClampCounts.Of(glue))
            .Select(c => c.AtOnce)
            .DefaultIfEmpty(0)
            .Max();
        if (most > 0)
        {
            CrewSpec crew = glue.Spec.Crew!;
            yield return $"HELD BY {crew.ClampsCalled}, at both ends of a plank and between, no further apart than the job's clamp-spacing, until its glue may be sanded by the planned temperature: those of sessions before that are still on are counted with them. At most {NumberText.Trimmed(most, 0)} are on at once{(crew.ClampsOnHand is { } hand ? $", and {NumberText.Trimmed(hand, 0)} are on hand" : "")}."
                + (
                    crew.WaitsForClamps && crew.ClampsOnHand < most + OnOnePlank(glue)
                        ? " No batch goes down before there are enough for it: where a session ends long before its shift does with most of them on, it is clamps that it wants."
                        : ""
                );
        }
    }

    /// <summary>12.0 g (8.0 g to 18.0 g) of silica; for what the filler of a batch weighs.</summary>
    public static string Filler(FillerSpec filler, double grams, LengthUnit unit)
    {
        Estimate kg = filler.To(Estimate.Exactly(grams / 1000));
        return $"{AmountText.Grams(1000 * kg.Usual, unit)}{(kg.Least == kg.Most ? "" : $", {AmountText.Grams(1000 * kg.Least, unit)} to {AmountText.Grams(1000 * kg.Most, unit)},")} of {filler.Name}";
    }

    private static string Part(GlueUse use) =>
        use switch
        {
            GlueUse.Weave => "coat, part",
            GlueUse.Fairing => "fairing, part",
            GlueUse.Fillet => "fillet, part",
            _ => "cloth",
        };

    /// <summary>4.20 m² of cloth; 3.5 m of fillet.</summary>
    public static string Covers(GlueBatch batch, GlueUse use, LengthUnit unit) =>
        use switch
        {
            GlueUse.Fillet => $"{LengthText.ForPaper(batch.LengthMm, unit)} of it",
            GlueUse.Fairing => $"{PlanWords.Area(batch.ClothMm2, unit)} of low places",
            GlueUse.Weave => $"{PlanWords.Area(batch.ClothMm2, unit)} to coat",
            _ => $"{PlanWords.Area(batch.ClothMm2, unit)} of cloth",
        };

    /// <summary>Planks in the order in which they go down.</summary>
    public static string InOrder(GlueBatch batch) =>
        string.Join(", ", batch.Planks.Select(p => p.Id.ToString()));

    public static string Percent(double part) => NumberText.Trimmed(100 * part, 1) + " %";
}
