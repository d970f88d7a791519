using System.Globalization;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Tables;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Tables and full-size sections for setting up, and the corner at the chine.</summary>
internal static class SettingUpFiles
{
    public static FeatureFiles Of(BottomPlan plan)
    {
        if (plan.SettingUp is not { } found)
        {
            return FeatureFiles.None;
        }

        Job job = plan.Job;
        ListedTable[] Listed(string name, bool any, Func<Job, SettingUpPlan, Table> table) =>
            any ? [ListedTable.Of($"setting-up-{name}", () => table(job, found))] : [];
        return new(
            [
                BookSection.Of(
                    InBook.SettingUp,
                    "setting-up",
                    "Setting up",
                    () => SettingUpPages.Of(job, found)
                ),
            ],
            [
                .. Listed("frames", !found.Sections.IsEmpty, SettingUpTables.Frames),
                .. Listed("moulds", !found.Sections.IsEmpty, SettingUpTables.Moulds),
                .. Listed("rabbet", !found.Rabbet.IsEmpty, SettingUpTables.Rabbet),
                .. Listed("stringers", !found.Stringers.IsEmpty, SettingUpTables.Stringers),
                .. Listed("chine", !found.Chine.IsEmpty, SettingUpTables.Chine),
            ],
            found.Sections.IsEmpty
                ? []
                :
                [
                    MadeFiles.FullSize(
                        "sections",
                        job,
                        "full-size sections",
                        () =>
                            [
                                .. found.Sections.SelectMany(s =>
                                    LongPages.Of(job, SectionDrawing.OnPaper(job, found, s))
                                ),
                            ]
                    ),
                    new("DXF of sections", output => Dxf(output, job, found)),
                ]
        );
    }

    private static void Dxf(OutputFolder output, Job job, SettingUpPlan found)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (FrameSection section in found.Sections)
        {
            string name = FileName(section, taken);
            MadeFiles.Dxf(output, name, SectionDrawing.AtOrigin(job, found, section), job);
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
