using System.Buffers.Binary;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text;

namespace PlankFit.Draughting.Fonts;

/// <summary>
/// Inter (SIL Open Font License 1.1), regular and semi-bold: the only lettering that is used, so that a sheet looks the same on every machine.
/// It is carried inside another assembly, which is read as a file here and never loaded.
/// </summary>
public static class InterFonts
{
    private static readonly Lazy<(FontFile Regular, FontFile SemiBold)> Both = new(Load);

    public static FontFile Regular => Both.Value.Regular;

    public static FontFile SemiBold => Both.Value.SemiBold;

    public static FontFile Of(bool bold) => bold ? SemiBold : Regular;

    private static (FontFile, FontFile) Load()
    {
        using Stream carried =
            typeof(InterFonts).Assembly.GetManifestResourceStream("Inter")
            ?? throw new InvalidOperationException("The program was built without its lettering.");
        using var assembly = new PEReader(carried);
        ReadOnlySpan<byte> assets = Assets(assembly);
        return (
            new FontFile(Asset(assets, "/Assets/Inter-Regular.ttf")),
            new FontFile(Asset(assets, "/Assets/Inter-SemiBold.ttf"))
        );
    }

    private static ReadOnlySpan<byte> Assets(PEReader assembly)
    {
        MetadataReader metadata = assembly.GetMetadataReader();
        foreach (ManifestResourceHandle handle in metadata.ManifestResources)
        {
            ManifestResource resource = metadata.GetManifestResource(handle);
            if (metadata.StringComparer.Equals(resource.Name, "!AvaloniaResources"))
            {
                int place = assembly.PEHeaders.CorHeader!.ResourcesDirectory.RelativeVirtualAddress;
                PEMemoryBlock block = assembly.GetSectionData(place + (int)resource.Offset);
                int length = block.GetReader(0, 4).ReadInt32();
                return block.GetContent(4, length).AsSpan();
            }
        }

        throw new InvalidOperationException("The lettering's assembly holds no assets.");
    }

    /// <summary>The assets: the index's length, its version, the number of entries; each a path, an offset and a size; then the data.</summary>
    private static byte[] Asset(ReadOnlySpan<byte> assets, string path)
    {
        byte[] wanted = Encoding.UTF8.GetBytes(path);
        int data = 4 + BinaryPrimitives.ReadInt32LittleEndian(assets);
        int count = BinaryPrimitives.ReadInt32LittleEndian(assets[8..]);
        int at = 12;
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> name = assets.Slice(at + 1, assets[at]); // every path is shorter than 128 bytes, so its length is one byte
            at += 1 + name.Length;
            if (name.SequenceEqual(wanted))
            {
                int offset = BinaryPrimitives.ReadInt32LittleEndian(assets[at..]);
                int size = BinaryPrimitives.ReadInt32LittleEndian(assets[(at + 4)..]);
                return assets.Slice(data + offset, size).ToArray();
            }

            at += 8;
        }

        throw new InvalidOperationException($"The lettering's assembly holds no {path}.");
    }
}
