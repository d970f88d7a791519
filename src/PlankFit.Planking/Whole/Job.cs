using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Whole;

/// <summary>A job as it was asked for, all lengths in millimetres, angles in degrees as the builder states them: what planks are laid by, and what is wanted besides.</summary>
public sealed record Job(PlankingJob Planking)
{
    public string Name { get; init; } = "";

    /// <summary>Six hexadecimal digits that change when any input file changes; printed on every sheet.</summary>
    public string Revision { get; init; } = "";

    /// <summary>The cells of the table that are right, however they stand out.</summary>
    public AsWritten AsWritten { get; init; } = AsWritten.None;

    /// <summary>What is amiss with the table, in a few words for the margin of every sheet; empty where nothing is.</summary>
    public string Margin { get; init; } = "";

    /// <summary>In which lengths are shown: feet and inches, inches, or the metric unit that the job is written in.</summary>
    public LengthUnit Units
    {
        get => Planking.Units;
        init => Planking = Planking with { Units = value };
    }

    /// <summary>In which the job, its table and its stock are written; what is to be read back is written so.</summary>
    public LengthUnit WrittenIn
    {
        get => Planking.WrittenIn;
        init => Planking = Planking with { WrittenIn = value };
    }

    /// <summary>The same job with lengths shown in that unit; what it is written in, and what comes of it, stays.</summary>
    public Job ShownIn(LengthUnit unit) =>
        this with
        {
            Planking = Shown(Planking, unit),
            Panels = [.. Panels.Select(p => Shown(p, unit))],
        };

    private static PlankingJob Shown(PlankingJob planking, LengthUnit unit) =>
        planking with
        {
            Units = unit,
            WrittenIn = planking.WrittenIn,
        };

    /// <summary>Where positions grow forward in the job's files: x = this minus the position, mm. Null where the position is x.</summary>
    public double? PositionsFromMm { get; init; }

    public OffsetTable Offsets
    {
        get => Planking.Offsets;
        init => Planking = Planking with { Offsets = value };
    }

    public HullSpec Hull
    {
        get => Planking.Hull;
        init => Planking = Planking with { Hull = value };
    }

    public ImmutableArray<LayerSpec> Layers
    {
        get => Planking.Layers;
        init => Planking = Planking with { Layers = value };
    }

    public EndRules Ends
    {
        get => Planking.Ends;
        init => Planking = Planking with { Ends = value };
    }

    public BendLimits Limits
    {
        get => Planking.Limits;
        init => Planking = Planking with { Limits = value };
    }

    /// <summary>The keel's layers; none where the job names none.</summary>
    public KeelSpec Keel
    {
        get => Planking.Keel;
        init => Planking = Planking with { Keel = value };
    }

    /// <summary>What was measured on the hull as it stands; empty where nothing was.</summary>
    public AsBuiltSpec AsBuilt
    {
        get => Planking.AsBuilt;
        init => Planking = Planking with { AsBuilt = value };
    }

    /// <summary>What the planks are made of; null where the job does not say.</summary>
    public TimberSpec? Timber
    {
        get => Planking.Timber;
        init => Planking = Planking with { Timber = value };
    }

    /// <summary>The hull's other panels, each with its own layers; the job's own planking is the bottom's.</summary>
    public ImmutableArray<PlankingJob> Panels { get; init; } = [];

    /// <summary>What is asked of the files that come out.</summary>
    public OutputSpec Output { get; init; } = OutputSpec.Default;

    /// <summary>Frames, bevels and the corner at the chine; null where the job does not ask.</summary>
    public SettingUpSpec? SettingUp { get; init; }

    /// <summary>How long planks are pieced; null where the job does not say how long stock is.</summary>
    public JointSpec? Joints { get; init; }

    /// <summary>What lies behind the planks.</summary>
    public ImmutableArray<FramingSpec> Framing { get; init; } = [];

    /// <summary>How the planks are held; null where the job does not say.</summary>
    public FasteningSpec? Fastenings { get; init; }

    /// <summary>The stock that the planks are sawn out of; null where the job names none.</summary>
    public NestSpec? Nest { get; init; }

    /// <summary>How far table and frames are trusted; null where the job does not ask how sure its planks are.</summary>
    public TrustSpec? Trust { get; init; }

    /// <summary>The cloths that sheathing is cut from.</summary>
    public ImmutableArray<ClothSpec> Cloths { get; init; } = [];

    /// <summary>How the cloths of the bottom's stack lie; none where the job does not say.</summary>
    public ImmutableArray<SheathingSpec> Sheathing { get; init; } = [];

    /// <summary>Resin, glue, crew and clock; null where the job names neither resin nor glue.</summary>
    public GlueSpec? Glue { get; init; }

    /// <summary>Whether the work is planned in sessions, and so what is glued already is asked for.</summary>
    public bool IsPlannedBySessions => Glue is { Crew: not null, Clock: not null };

    /// <summary>What is asked of stiffness, mass and the bill of materials; null where nothing is.</summary>
    public StructureSpec? Structure { get; init; }

    /// <summary>The tables of the job that are worked out for the bottom alone, of those that it has.</summary>
    public IEnumerable<string> AskedOfTheBottom =>
        new (string Name, bool Asked)[]
        {
            ("[joints]", Joints is not null),
            ("[[behind]]", !Framing.IsEmpty),
            ("[fastenings]", Fastenings is not null),
            ("[setting-up]", SettingUp is not null),
            ("[trust]", Trust is not null),
            ("[[sheathing]]", !Sheathing.IsEmpty),
            ("[resin] and [glue]", Glue is not null),
            ("[structure]", Structure is not null),
        }
            .Where(p => p.Asked)
            .Select(p => p.Name);

    /// <summary>The same asked of another panel, without what is worked out for the bottom alone.</summary>
    public Job OfOtherPanel(PlankingJob planking) =>
        this with
        {
            Planking = planking,
            Panels = [],
            SettingUp = null,
            Joints = null,
            Framing = [],
            Fastenings = null,
            Trust = null,
            Sheathing = [],
            Glue = null,
            Structure = null,
        };
}
