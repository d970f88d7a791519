using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>A job file's text to a draft, with every fault that it has.</summary>
public static class JobBinder
{
    /// <summary>Never throws for what the text holds.</summary>
    /// <param name="file">How messages name the file.</param>
    public static (JobDraft Draft, ImmutableArray<Finding> Findings) Read(string text, string file)
    {
        List<Finding> findings = [];
        if (string.IsNullOrWhiteSpace(text))
        {
            findings.Add(
                new(
                    Severity.Error,
                    file,
                    "the file is empty: a job has [job], [hull] and at least one [[layer]]"
                )
            );
            return (Empty(file), [.. findings]);
        }

        TomlText toml = TomlText.Read(text, file, findings);
        JobDraft draft = Bind(toml, file, findings);
        if (draft.Units is null)
        {
            // Without the unit a length is no ground for a doubt.
            findings.RemoveAll(f => f.Severity == Severity.Warning);
        }

        return (draft, InOrder.Of(findings));
    }

    private static JobDraft Bind(TomlText toml, string file, List<Finding> findings)
    {
        var faults = new JobFaults(findings, toml.Whole, toml.HeadsWhole);
        var root = new TableReader(toml.Root, "the job file", faults);
        TableReader? job = root.Table("job", "[job]");
        if (job is null)
        {
            Missing(root, "job", "[job] with name and units");
        }

        string? name = job?.Text("name", "the name that stands on every sheet");
        LengthUnit? units = job is null ? null : Units(job);
        job?.Close();
        LengthUnit length = units ?? LengthUnit.Millimetre;

        TableReader? hullTable = root.Table("hull", "[hull]");
        if (hullTable is null)
        {
            Missing(root, "hull", "[hull] with offsets, offsets-are-to, keel and chine");
        }

        HullBinding? hull = hullTable is null ? null : HullBinding.Bind(hullTable);
        TimberSpec? timber = TimberBinder.Bind(root.Table("timber", "[timber]"), length);
        ImmutableArray<TableReader> layerTables = root.Tables("layer", "layer", Bounds.Layers);
        ImmutableArray<LayerSpec> layers = LayerBinder.Bind(
            layerTables,
            (timber ?? TimberSpec.Default).Table,
            length
        );
        if (!layers.Any(l => l is PlankLayerSpec))
        {
            faults.Missing(
                root.At,
                "no layer of planks: a job has at least one [[layer]] with thickness, width, heads and angle"
            );
        }

        EndRules ends = EndsBinder.Bind(root.Table("ends", "[ends]"), length);
        BendLimits limits = LimitsBinder.Bind(root.Table("limits", "[limits]"));
        OutputSpec output = Output(root.Table("output", "[output]"));
        SettingUpBinding settingUp = SettingUpBinder.Bind(
            root.Table("setting-up", "[setting-up]"),
            length
        );
        FramingBinding behind = FramingBinder.Bind(root.Tables("behind", "behind"), length);
        List<NamedLine> keelLines = [];
        JobParts parts = new(
            KeelBinder.Bind(
                root.Table("keel", "[keel]"),
                root.Tables("keel-layer", "keel-layer", Bounds.Layers),
                layers,
                length,
                keelLines
            ),
            settingUp.Spec,
            JointsBinder.Bind(root.Table("joints", "[joints]"), length, layers),
            behind.Specs,
            FasteningsBinder.Bind(root.Table("fastenings", "[fastenings]"), layers, length),
            // A layer that names its wood is enough.
            timber
                ?? (
                    layers.Any(l => l is PlankLayerSpec { Species: not null })
                        ? TimberSpec.Default
                        : null
                ),
            AsBuiltBinder.Bind(root.Table("standing", "[standing]"))
        )
        {
            KeelLines = [.. keelLines],
            Nest = NestBinder.Bind(root.Table("nest", "[nest]"), length, layers),
        };
        root.Close();
        return new(
            name,
            units,
            hull?.OffsetsPath,
            hull?.OffsetsAt ?? new(file, 1, 1),
            hull?.Forward ?? false,
            hull?.Spec,
            [.. hull?.Lines ?? [], .. settingUp.Lines, .. behind.Lines],
            layers,
            ends,
            limits,
            output
        )
        {
            Parts = parts,
            Stations = [.. settingUp.Stations, .. behind.Stations],
            WidthsAt = [.. layerTables.Select(t => t.PlaceOf("width"))],
        };
    }

    private static void Missing(TableReader root, string key, string what)
    {
        // Where the key is there in another form, that has been said already.
        if (root.Find(key) is null)
        {
            root.Missing(key, "give " + what);
        }
    }

    private static LengthUnit? Units(TableReader job) =>
        job.Choice(
            "units",
            [
                .. LengthUnits
                    .Accepted.Split(", ")
                    .Select(name => (name, LengthUnits.Find(name)!.Value)),
            ],
            required: true
        );

    private static OutputSpec Output(TableReader? output)
    {
        if (output is null)
        {
            return OutputSpec.Default;
        }

        DxfUnits units =
            output.Choice(
                "dxf-units",
                [("mm", DxfUnits.Millimetres), ("in", DxfUnits.Inches)],
                required: false
            ) ?? OutputSpec.Default.DxfUnits;
        PaperSize paper =
            output.Choice(
                "paper",
                [("A4", PaperSize.A4), ("A3", PaperSize.A3), ("Letter", PaperSize.Letter)],
                required: false
            ) ?? OutputSpec.Default.Paper;
        PatternPages patterns =
            output.Choice(
                "patterns",
                [("long", PatternPages.Long), ("tiled", PatternPages.Tiled)],
                required: false
            ) ?? OutputSpec.Default.Patterns;
        bool pictures =
            output.Choice("cards", [("pdf", false), ("pdf-svg-png", true)], required: false)
            ?? OutputSpec.Default.CardPictures;
        output.Close();
        return new(units, paper) { Patterns = patterns, CardPictures = pictures };
    }

    private static JobDraft Empty(string file) =>
        new(
            null,
            null,
            null,
            new(file, 1, 1),
            false,
            null,
            [],
            [],
            EndRules.Default,
            BendLimits.Default,
            OutputSpec.Default
        );
}
