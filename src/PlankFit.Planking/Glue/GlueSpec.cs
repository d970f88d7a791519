using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>What the job says of resin, glue, crew and clock.</summary>
/// <param name="Resin">What wets out cloth and primes wood; null where there is none.</param>
/// <param name="Glue">What goes between the layers; null where there is none.</param>
public sealed record GlueSpec(Mix? Resin, Mix? Glue)
{
    /// <summary>Thickness of the glue between two layers, mm: 0.2, 0.3 and 0.5 are a proposal, no source.</summary>
    public Estimate FilmMm { get; init; } = UsualFilmMm;

    public static readonly Estimate UsualFilmMm = new(0.2, 0.3, 0.5);

    /// <summary>The first coat that wood drinks before cloth or glue, g/m²; null where none is asked for.</summary>
    public Estimate? PrimingGsm { get; init; }

    /// <summary>To fill the weave of the outermost cloth, g/m², all coats; null where none is asked for.</summary>
    public Estimate? WeaveGsm { get; init; }

    /// <summary>In so many coats: a proposal, no source.</summary>
    public int WeaveCoats { get; init; } = UsualWeaveCoats;

    public const int UsualWeaveCoats = 2;

    public ImmutableArray<FilletSpec> Fillets { get; init; } = [];

    public FairingSpec? Fairing { get; init; }

    /// <summary>What thickens glue, fillets and fairing.</summary>
    public ImmutableArray<FillerSpec> Fillers { get; init; } = [];

    /// <summary>Names of the stages of fairing and fillets, in their order.</summary>
    public ImmutableArray<string> Finishes =>
        BetweenLayers is null
            ? []
            :
            [
                .. Fairing is null ? [] : new[] { FairingSpec.Stage },
                .. Fillets.Select(f => FilletSpec.StageOf(f.Along)),
            ];

    public IEnumerable<FillerSpec> FillersOf(GlueUse use) => Fillers.Where(f => f.GoesInto(use));

    /// <summary>kg of resin and hardener in a litre of what is put on, by the usual rate of each filler whose density is known.</summary>
    public double MixKgPerLitre(Mix mix, GlueUse use) =>
        1
        / (
            (1 / mix.Ratio.KgPerLitre)
            + FillersOf(use)
                .Where(f => f.KgPerLitre is not null)
                .Sum(f => f.GramsPerKg.Usual / 1000 / f.KgPerLitre!.Value)
        );

    /// <summary>Who works; null where the job does not say, and then there are amounts and no sessions.</summary>
    public CrewSpec? Crew { get; init; }

    /// <summary>When they work and how warm it is; null where the job does not say.</summary>
    public ClockSpec? Clock { get; init; }

    /// <summary>The mixing cup; null where the job does not say how wide it is.</summary>
    public Cup? Cup { get; init; }

    /// <summary>What is glued already.</summary>
    public GlueProgress Done { get; init; } = GlueProgress.None;

    /// <summary>What glues layers on each other: the glue, or the resin thickened where the job names no other.</summary>
    public Mix? BetweenLayers => Glue ?? Resin;
}

/// <summary>A fillet along something, of known length.</summary>
public sealed record FilletSpec(string Along, FilletSection Section, double LengthMm)
{
    /// <summary>How the stage of one is called.</summary>
    public static string StageOf(string along) => $"fillet {along}";
}

/// <summary>Filler over the outside, to be boarded fair.</summary>
/// <param name="DepthMm">Where there is any.</param>
/// <param name="Part">Of the area that has any.</param>
public sealed record FairingSpec(double DepthMm, double Part)
{
    /// <summary>How its stage is called.</summary>
    public const string Stage = "fairing";
}

/// <summary>Who works, and how fast: all but the hands are proposals, no source.</summary>
public sealed record CrewSpec(int Hands)
{
    /// <summary>To weigh, mix and carry one batch.</summary>
    public double MixMinutes { get; init; } = 4;

    /// <summary>To spread the glue for one plank, one hand.</summary>
    public double SpreadMinutes { get; init; } = 3;

    /// <summary>To fit one plank and fasten it, two hands.</summary>
    public double FastenMinutes { get; init; } = 12;

    /// <summary>How long a plank's glue may lie open before the plank is on its way down.</summary>
    public double WaitMinutes { get; init; } = 10;

    /// <summary>To wet out a square metre of cloth, two hands.</summary>
    public double WetMinutesPerM2 { get; init; } = 6;

    /// <summary>To roll a coat over a square metre of cloth, two hands.</summary>
    public double CoatMinutesPerM2 { get; init; } = 3;

    /// <summary>To lay filler on a square metre of what has any, two hands.</summary>
    public double FairMinutesPerM2 { get; init; } = 12;

    /// <summary>To lay and draw a metre of fillet, two hands.</summary>
    public double FilletMinutesPerM { get; init; } = 3;

    /// <summary>To trim a metre of cloth while it is tacky, one hand.</summary>
    public double TrimMinutesPerM { get; init; } = 2;

    /// <summary>To wash, scrape and key a square metre of what has cured, one hand.</summary>
    public double KeyMinutesPerM2 { get; init; } = 10;

    /// <summary>To board a square metre of a skin fair, one hand.</summary>
    public double BoardMinutesPerM2 { get; init; } = 15;

    /// <summary>Each session of a skin is searched for a sooner end; else the list stands as it is.</summary>
    public bool Searched { get; init; }

    /// <summary>The most that a batch may be, g; null for what the clocks allow.</summary>
    public double? MostGrams { get; init; }

    /// <summary>Less is not mixed, since it cannot be measured, g; what is left over is waste.</summary>
    public double LeastGrams { get; init; } = 20;

    /// <summary>What holds planks until the glue has cured; null where the job names nothing: then its fastenings do, or, where there are none, clamps.</summary>
    public string? HeldBy { get; init; }

    /// <summary>How many planks one of them lies over.</summary>
    public int HoldsPlanks { get; init; } = 1;

    /// <summary>Null where nobody counted.</summary>
    public int? ClampsOnHand { get; init; }

    /// <summary>No more of them are on at once than are on hand: a batch is smaller, or waits until some come off. Else it is only told.</summary>
    public bool WaitsForClamps { get; init; }

    /// <summary>Common practice, no source.</summary>
    public const string UsuallyHeldBy = "clamps";

    public string ClampsCalled => HeldBy ?? UsuallyHeldBy;

    /// <summary>Hands that a plank takes to fit and fasten.</summary>
    public const int FastenHands = 2;
}

/// <summary>The working day and its temperature.</summary>
/// <param name="Shifts">From and to, minutes after midnight, in order, none beyond midnight.</param>
public sealed record ClockSpec(
    ImmutableArray<(double From, double To)> Shifts,
    DayTemperature Temperature
);
