using System.Runtime.InteropServices;
using System.Text;

namespace Compat.Curation.Reading;

/// <summary>Tells a file of bytes from what only has a path: a link, a folder, a pipe, a device.</summary>
internal static class RegularFile
{
    // Fixed by the kernel's interface: AT_FDCWD, AT_SYMLINK_NOFOLLOW, STATX_TYPE, the place of stx_mode, S_IFMT and S_IFREG.
    private const int HereFolder = -100;
    private const int FollowNoLink = 0x100;
    private const uint OfType = 1;
    private const int ModePlace = 28;
    private const int TypeBits = 0xF000;
    private const int RegularType = 0x8000;

    /// <summary>Whether a path is a file of bytes itself; a link is none. Elsewhere than on Linux pipes and devices are not told apart.</summary>
    /// <exception cref="IOException">There is no such path.</exception>
    /// <exception cref="UnauthorizedAccessException">Its folder may not be read.</exception>
    public static bool Is(string path)
    {
        if ((File.GetAttributes(path) & (FileAttributes.ReparsePoint | FileAttributes.Directory)) != 0) return false;
        return !OperatingSystem.IsLinux() || TypeOf(path) is not { } type || type == RegularType;
    }

    /// <summary>The type of a path; null where the system does not say.</summary>
    private static int? TypeOf(string path)
    {
        try
        {
            var status = new byte[256];
            return statx(HereFolder, Encoding.UTF8.GetBytes(path + "\0"), FollowNoLink, OfType, status) == 0
                ? BitConverter.ToUInt16(status, ModePlace) & TypeBits : null;
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    [DllImport("libc", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int statx(int folder, byte[] path, int flags, uint mask, byte[] status);
}
