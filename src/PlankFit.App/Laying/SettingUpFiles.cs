using System.Collections.Immutable;
using System.Globalization;
using PlankFit.App.Running;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Export;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Tables;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Tables and full-size sections for setting up, and the corner at the chine.</summary>
internal static class SettingUpFiles
{
    private const string Folder = "setting-up";

    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.SettingUp is not { } found)
        {
            return [];
        }

        Job job = plan.Job;
        ImmutableArray<FileWork>.Builder work = ImmutableArray.CreateBuilder<FileWork>();
        work.Add(
            MadeFiles.Pdf("setting-up.pdf", plan, "setting up", () => SettingUpPages.Of(job, found))
        );
        void Table(string name, bool any, Func<Job, SettingUpPlan, Table> table)
        {
            if (any)
            {
                work.Add(
                    MadeFiles.File($"{Folder}/{name}.csv", s => Csv.Write(table(job, found), s))
                );
            }
        }

        Table("frames", !found.Sections.IsEmpty, SettingUpTables.Frames);
        Table("moulds", !found.Sections.IsEmpty, SettingUpTables.Moulds);
        Table("rabbet", !found.Rabbet.IsEmpty, SettingUpTables.Rabbet);
        Table("stringers", !found.Stringers.IsEmpty, SettingUpTables.Stringers);
        Table("chine", !found.Chine.IsEmpty, SettingUpTables.Chine);
        if (!found.Sections.IsEmpty)
        {
            work.Add(
                MadeFiles.Pdf(
                    "patterns/sections.pdf",
                    plan,
                    "full-size sections",
                    () =>
                        [
                            .. found.Sections.SelectMany(s =>
                                LongPages.Of(job, SectionDrawing.OnPaper(job, found, s))
                            ),
                        ]
                )
            );
            work.Add(new("DXF of sections", output => Dxf(output, job, found)));
        }

        return work.ToImmutable();
    }

    private static void Dxf(OutputFolder output, Job job, SettingUpPlan found)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (FrameSection section in found.Sections)
        {
            string name = FileName(section, taken);
            Drawing drawing = SectionDrawing.AtOrigin(job, found, section);
            foreach (
                (string folder, DxfVersion version) in new[]
                {
                    ("r2000", DxfVersion.R2000),
                    ("r12", DxfVersion.R12),
                }
            )
            {
                output.Write(
                    $"dxf/{folder}/{name}.dxf",
                    s => DxfWriter.Write(s, drawing, OutputAsked.Dxf(job.Output, version))
                );
            }
        }
    }

    /// <summary>"section-4", "section-frame-2600": letters, digits and hyphens only, and no name twice.</summary>
    private static string FileName(FrameSection section, HashSet<string> taken)
    {
        string plain = string.Concat(
            section.Name.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')
        );
        string name = section.IsStation ? $"section-{plain}" : $"section-frame-{plain}";
        string free = name;
        for (int i = 2; !taken.Add(free); i++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{name}-{i}");
        }

        return free;
    }
}
