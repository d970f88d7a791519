using System.Security.Cryptography;

namespace PlankFit.Tests.Disk;

/// <summary>All that is in a folder, hidden things and empty folders too, as lines that can be compared.</summary>
internal static class FolderState
{
    public static string[] Of(string folder) =>
        [
            .. new DirectoryInfo(folder)
                .EnumerateFileSystemInfos("*", SearchOption.AllDirectories)
                .Select(f => $"{Path.GetRelativePath(folder, f.FullName)} {What(f)}")
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>A copy of it as it is at this moment; links and times are not kept.</summary>
    public static string Copy(string folder, string to)
    {
        Directory.CreateDirectory(to);
        foreach (FileSystemInfo there in new DirectoryInfo(folder).EnumerateFileSystemInfos())
        {
            string copy = Path.Combine(to, there.Name);
            if (there is FileInfo { Name: "lock" })
            {
                File.WriteAllText(copy, ""); // it is held, and holds nothing
            }
            else if (there is FileInfo file)
            {
                file.CopyTo(copy);
            }
            else
            {
                Copy(there.FullName, copy);
            }
        }

        return to;
    }

    private static string What(FileSystemInfo there) =>
        there switch
        {
            { LinkTarget: { } target } => "-> " + target,
            DirectoryInfo => "/",
            _ => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(there.FullName))),
        };
}
