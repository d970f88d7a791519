using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using Microsoft.Build.Framework;
using Microsoft.Build.Utilities;

/// <summary>
/// A task of the build, compiled by MSBuild alone and no part of the program: writes who made what lies beside it, under which licence, with the licence's text.
/// The text is the package's own where it carries one, else the standard text of its licence from this folder.
/// </summary>
public sealed class WriteNotices : Task
{
    /// <summary>Files of packages that are copied beside the program, with NuGetPackageId, NuGetPackageVersion and PathInPackage.</summary>
    public ITaskItem[] Files { get; set; }

    /// <summary>Folders of packages of which something is carried inside the program.</summary>
    public ITaskItem[] Downloads { get; set; }

    /// <summary>Folders of packages of the runtime, where it lies beside the program.</summary>
    public ITaskItem[] Runtimes { get; set; } = Array.Empty<ITaskItem>();

    /// <summary>Folders of npm's packages of which something is bundled into the program.</summary>
    public ITaskItem[] Scripts { get; set; } = Array.Empty<ITaskItem>();

    /// <summary>Folder of the standard texts.</summary>
    public string Texts { get; set; }

    public string Output { get; set; }

    public override bool Execute()
    {
        var written = new StringBuilder(Text("Head"));
        var standard = new SortedSet<string>(StringComparer.Ordinal);
        foreach (
            IGrouping<string, ITaskItem> package in Files
                .GroupBy(Folder)
                .Concat(Downloads.GroupBy(d => d.ItemSpec))
                .Concat(Runtimes.GroupBy(d => d.ItemSpec))
                .OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase)
        )
        {
            Package(package.Key, package, written, standard);
        }

        foreach (string folder in Scripts.Select(s => s.ItemSpec))
        {
            Script(folder, written);
        }

        string carried = Text("Carried");
        written.Append(carried);
        // What is carried inside a package or the program is told by nobody else.
        standard.UnionWith(
            Directory
                .GetFiles(Texts, "*.txt")
                .Select(f => Path.GetFileNameWithoutExtension(f))
                .Where(name => carried.Split(' ', '\n').Any(word => word.TrimEnd('.', ',') == name))
        );
        foreach (string licence in standard)
        {
            if (!File.Exists(Path.Combine(Texts, licence + ".txt")))
            {
                Log.LogError(
                    $"{licence}: a package has this licence, and {Texts} has no text of it"
                );
                continue;
            }

            written.Append(Rule('=')).Append($"The text of {licence}\n\n").Append(Text(licence));
        }

        Directory.CreateDirectory(Path.GetDirectoryName(Output));
        File.WriteAllText(Output, written.ToString(), new UTF8Encoding(false));
        return !Log.HasLoggedErrors;
    }

    private void Package(
        string folder,
        IEnumerable<ITaskItem> files,
        StringBuilder written,
        ISet<string> standard
    )
    {
        var spec = new XmlDocument();
        spec.Load(Directory.GetFiles(folder, "*.nuspec").Single());
        string Of(string name) =>
            spec.GetElementsByTagName(name).Cast<XmlNode>().FirstOrDefault()?.InnerText.Trim()
            ?? "";
        XmlNode licence = spec.GetElementsByTagName("license").Cast<XmlNode>().FirstOrDefault();
        bool isFile = licence?.Attributes["type"]?.Value == "file";
        if (licence == null)
        {
            Log.LogError($"{folder}: the package names no licence");
            return;
        }

        written.Append(Rule('-')).Append($"{Of("id")} {Of("version")}\n");
        written.Append($"Licence: {(isFile ? "as below" : licence.InnerText)}\n");
        foreach (string name in new[] { "copyright", "authors", "projectUrl" })
        {
            if (Of(name).Length > 0)
            {
                written.Append($"{name}: {Of(name)}\n");
            }
        }

        string[] names = files
            .Select(f => f.GetMetadata("PathInPackage"))
            .Where(p => p.Length > 0)
            .Select(p => Path.GetFileName(p))
            .Distinct()
            .OrderBy(n => n, StringComparer.Ordinal)
            .ToArray();
        written.Append(
            names.Length > 0 ? "Files: " + string.Join(", ", names) + "\n"
            : Runtimes.Any(r => r.ItemSpec == folder)
                ? "The runtime: all files beside the program that are named nowhere else here\n"
            : "Carried inside PlankFit.Draughting.dll\n"
        );
        string[] own = Directory
            .GetFiles(folder)
            .Where(f =>
                new[] { "LICENSE", "LICENCE", "NOTICE", "THIRD-PARTY", "THIRDPARTY" }.Any(w =>
                    Path.GetFileName(f).StartsWith(w, StringComparison.OrdinalIgnoreCase)
                )
            )
            .OrderBy(f => f, StringComparer.Ordinal)
            .ToArray();
        foreach (string file in own)
        {
            written
                .Append($"\n{Path.GetFileName(file)} of the package:\n\n")
                .Append(File.ReadAllText(file).Replace("\r\n", "\n").Trim())
                .Append('\n');
        }

        if (
            !isFile
            && !own.Any(f =>
                Path.GetFileName(f).StartsWith("LICEN", StringComparison.OrdinalIgnoreCase)
            )
        )
        {
            standard.Add(licence.InnerText);
        }
    }

    /// <summary>What npm's package says of itself, and its own text of its licence, which every one that is bundled must have.</summary>
    private void Script(string folder, StringBuilder written)
    {
        string spec = File.ReadAllText(Path.Combine(folder, "package.json"));
        string Of(string name) =>
            Regex
                .Match(spec, $"^  \"{name}\": \"([^\"]*)\"", RegexOptions.Multiline)
                .Groups[1]
                .Value;
        string text = Directory.GetFiles(folder, "LICEN*").OrderBy(f => f).FirstOrDefault();
        if (text == null)
        {
            Log.LogError($"{folder}: the package has no text of its licence");
            return;
        }

        written
            .Append(Rule('-'))
            .Append($"{Of("name")} {Of("version")}\nLicence: {Of("license")}\n")
            .Append("Carried inside plankfit-page.dll\n\n")
            .Append(File.ReadAllText(text).Replace("\r\n", "\n").Trim())
            .Append('\n');
    }

    private static string Folder(ITaskItem file)
    {
        string path = file.ItemSpec.Replace('\\', '/'),
            inside = file.GetMetadata("PathInPackage").Replace('\\', '/');
        return path.Substring(0, path.Length - inside.Length).TrimEnd('/');
    }

    private string Text(string name) =>
        File.ReadAllText(Path.Combine(Texts, name + ".txt")).Replace("\r\n", "\n").Trim() + "\n";

    private static string Rule(char sign) => "\n" + new string(sign, 80) + "\n";
}
