using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Fastenings;
using PlankFit.Reading.Framing;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Joints;
using PlankFit.Reading.Keel;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Panels;
using PlankFit.Reading.SettingUp;
using PlankFit.Reading.Sheathing;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Structure;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;
using PlankFit.Reading.Timber;
using PlankFit.Reading.Toml;
using PlankFit.Reading.Trust;

namespace PlankFit.Reading.Jobs;

/// <summary>A job file's text to a draft, with every fault that it has.</summary>
public static class JobBinder
{
    /// <summary>Never throws for what the text holds.</summary>
    /// <param name="file">How messages name the file.</param>
    public static (JobDraft Draft, ImmutableArray<Finding> Findings) Read(
        string text,
        string file
    ) => Read(text, file, new HashSet<string>());

    /// <param name="asked">Takes the keys that are asked for, each with the tables that it lies in: "layer.lap.width".</param>
    internal static (JobDraft Draft, ImmutableArray<Finding> Findings) Read(
        string text,
        string file,
        ISet<string> asked
    )
    {
        List<Finding> findings = [];
        string? none = string.IsNullOrWhiteSpace(text)
            ? FileLook.EmptyJob
            : FileLook.Mistaken(text, FileForm.Job, file);
        if (none is not null)
        {
            findings.Add(new(Severity.Error, file, none));
            return (Empty(file), [.. findings]);
        }

        var toml = TomlText.Read(text, file, findings);
        JobDraft draft = Bind(toml, file, findings, asked);
        if (draft.Units is null)
        {
            // Without the unit a length is no ground for a doubt.
            findings.RemoveAll(f => f.Severity == Severity.Warning);
        }

        return (draft, InOrder.Of(findings));
    }

    private static JobDraft Bind(
        TomlText toml,
        string file,
        List<Finding> findings,
        ISet<string> asked
    )
    {
        var faults = new JobFaults(findings, toml.Whole, toml.HeadsWhole, asked);
        var root = new TableReader(toml.Root, "the job file", "", JobKeys.File, faults);
        TableReader? job = root.Table(JobKeys.Job);
        if (job is null)
        {
            Missing(root, JobKeys.Job, "[job] with name and units");
        }

        string? name = job?.Text(HeadKeys.Name);
        LengthUnit? units = job?.Choice(HeadKeys.Units);
        job?.Close();
        LengthUnit length = units ?? LengthUnit.Millimetre;
        OutputSpec output = Output(root.Table(JobKeys.Output));
        faults.Shown = output.Shown(length);

        TableReader? hullTable = root.Table(JobKeys.Hull);
        if (hullTable is null)
        {
            Missing(root, JobKeys.Hull, "[hull] with offsets, offsets-are-to, keel and chine");
        }

        HullBinding? hull = hullTable is null ? null : HullBinding.Bind(hullTable);
        TimberSpec? timber = TimberBinder.Bind(root.Table(JobKeys.Timber), length);
        ImmutableArray<TableReader> layerTables = root.Tables(JobKeys.Layer);
        ImmutableArray<LayerSpec> allLayers = LayerBinder.Bind(
            layerTables,
            (timber ?? TimberSpec.Default).Table,
            length
        );
        var panels = PanelBinding.Bind(root.Tables(JobKeys.Panel), hull?.Spec?.Panel);
        TableReader? endsTable = root.Table(
            JobKeys.Ends,
            EndKeys.Of(panels.Named.Select(p => p.Name))
        );
        (
            PanelDraft bottom,
            ImmutableArray<PanelDraft> others,
            ImmutableDictionary<string, string> elsewhere
        ) = PanelLayers.Sorted(
            panels,
            layerTables,
            allLayers,
            panel => EndsBinder.OfPanel(endsTable, panel, length),
            faults
        );
        List<NamedLine> clothStations = [];
        ImmutableArray<TableReader> sheathingTables = root.Tables(JobKeys.Sheathing);
        ImmutableArray<SheathingSpec> sheathing = SheathingBinder.Bind(
            sheathingTables,
            bottom.Layers,
            length,
            clothStations
        );
        ImmutableArray<LayerSpec> layers = SheathingBinder.Lapped(bottom.Layers, sheathing);
        // A bottom of sheets is not planked; where another panel is, or would be but for a fault of its own, that is no fault.
        if (
            !layers.Any(l => l is PlankLayerSpec)
            && (!layers.IsEmpty || others.IsEmpty && !allLayers.Any(l => l is PlankLayerSpec))
        )
        {
            faults.Missing(
                root.At,
                "no layer of planks: a job has at least one [[layer]] with thickness, width, heads and angle"
            );
        }

        EndRules ends = EndsBinder.Bind(endsTable, length);
        BendLimits limits = LimitsBinder.Bind(root.Table(JobKeys.Limits));
        SettingUpBinding settingUp = SettingUpBinder.Bind(root.Table(JobKeys.SettingUp), length);
        FramingBinding behind = FramingBinder.Bind(root.Tables(JobKeys.Behind), length);
        List<NamedLine> keelLines = [];
        JobParts parts = new(
            KeelBinder.Bind(
                root.Table(JobKeys.Keel),
                root.Tables(JobKeys.KeelLayer),
                layers,
                elsewhere,
                length,
                keelLines
            ),
            settingUp.Spec,
            JointsBinder.Bind(root.Table(JobKeys.Joints), length, layers, elsewhere),
            behind.Specs,
            FasteningsBinder.Bind(root.Table(JobKeys.Fastenings), layers, length),
            // A layer that names its wood is enough.
            timber
                ?? (
                    allLayers.Any(l => l is PlankLayerSpec { Species: not null })
                        ? TimberSpec.Default
                        : null
                ),
            AsBuiltBinder.Bind(root.Table(JobKeys.AsBuilt))
        )
        {
            KeelLines = [.. keelLines],
            Nest = NestBinder.Bind(root.Table(JobKeys.Nest), length, allLayers),
            Trust = TrustBinder.Bind(root.Table(JobKeys.Trust), length),
            Cloths = ClothBinder.Bind(root.Tables(JobKeys.Cloth), length),
            Sheathing = sheathing,
            Structure = StructureBinder.Bind(root.Table(JobKeys.Structure), length),
            Glue = GlueBinder.Bind(
                new(root.Table(JobKeys.Resin), root.Table(JobKeys.Glue))
                {
                    Priming = root.Table(JobKeys.Priming),
                    Weave = root.Table(JobKeys.Weave),
                    Fillets = root.Tables(JobKeys.Fillet),
                    Fairing = root.Table(JobKeys.Fairing),
                    Fillers = root.Tables(JobKeys.Filler),
                    Crew = root.Table(JobKeys.Crew),
                    Clock = root.Table(JobKeys.Clock),
                },
                length
            ),
        };
        root.Close();
        return new(
            name,
            units,
            new(
                hull?.OffsetsPath,
                hull?.OffsetsAt ?? new(file, 1, 1),
                hull?.Forward ?? false,
                hull?.AsWritten ?? []
            ),
            hull?.Spec,
            [.. hull?.Lines ?? [], .. panels.Lines, .. settingUp.Lines, .. behind.Lines],
            layers,
            ends,
            limits
        )
        {
            Output = output,
            Parts = parts,
            Stations = [.. settingUp.Stations, .. behind.Stations, .. clothStations],
            WidthsAt = bottom.WidthsAt,
            Panels = others,
            PanelsFaulty = panels.Nameless || panels.Panels.Length < panels.Called.Count,
            Places = PlacesInJob.Of(
                root,
                layerTables,
                allLayers,
                (sheathingTables, SheathingKeys.Layer)
            ),
            Faulty = toml.Whole && toml.HeadsWhole ? Faulty(root, faults) : null,
        };
    }

    /// <summary>The tables in which an error is, by their keys.</summary>
    private static ImmutableHashSet<string> Faulty(TableReader root, JobFaults faults)
    {
        (int Line, string Key)[] heads = [.. root.Heads().OrderBy(h => h.Line)];
        return
        [
            .. faults.Errors.Select(at => heads.LastOrDefault(h => h.Line <= at.Line).Key ?? ""),
        ];
    }

    private static void Missing(TableReader root, TableKey key, string what)
    {
        // Where the key is there in another form, that has been said already.
        if (!root.Has(key))
        {
            root.Missing(key, "give " + what);
        }
    }

    private static OutputSpec Output(TableReader? output)
    {
        if (output is null)
        {
            return OutputSpec.Default;
        }

        var spec = new OutputSpec(
            output.ChoiceOrDefault(OutputKeys.DxfUnit),
            output.ChoiceOrDefault(OutputKeys.Paper)
        )
        {
            InchesAlone = output.ChoiceOrDefault(OutputKeys.Lengths),
            BothSides = output.ChoiceOrDefault(OutputKeys.Sides),
            Patterns = output.ChoiceOrDefault(OutputKeys.Patterns),
            CardPictures = output.ChoiceOrDefault(OutputKeys.Cards),
            Dxf = output.ChoiceOrDefault(OutputKeys.Dxf),
            SingleSheets = output.ChoiceOrDefault(OutputKeys.Sheets),
            DrawingsAsPng = output.ChoiceOrDefault(OutputKeys.Drawings),
            ShapeAsGlb = output.ChoiceOrDefault(OutputKeys.Shape),
        };
        output.Close();
        return spec;
    }

    private static JobDraft Empty(string file) =>
        new(
            null,
            null,
            new(null, new(file, 1, 1), false, []),
            null,
            [],
            [],
            EndRules.Default,
            BendLimits.Default
        );
}
