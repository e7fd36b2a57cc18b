# Makes the pictures beside it: codes written by segno (pip), an independent writer, photographed askew by Pillow.
# Run in the root of the repository: python3 tests/codes/make.py
import segno, numpy as np
from PIL import Image, ImageFilter
rng=np.random.default_rng(20261125)
text='WHITEHOLD1 {"o":{"garments":[{"label":"100% algodón, negro","pieces":12}]},"t":"Señal","w":"chalk/2x43","s":[165.0,2.8]}'
def base(err,scale=4):
    q=segno.make(text,error=err,mode='byte',encoding='utf-8',micro=False)
    m=np.array([[255*(1-v) for v in row] for row in q.matrix],np.uint8)
    m=np.pad(m,4,constant_values=255)
    return Image.fromarray(np.kron(m,np.ones((scale,scale),np.uint8))), q
def save(name,img): img.convert('L').save(f'tests/codes/{name}.pgm'); print(name,img.size)
im,q=base('m',3); print(q.designator); save('straight',im)
im4,_=base('m',4)
save('turned',im4.rotate(27,expand=True,fillcolor=255,resample=Image.BICUBIC))

def persp(img,dst):
    src=[(0,0),(img.width,0),(img.width,img.height),(0,img.height)]
    A=[];b=[]
    for (x,y),(u,v) in zip(dst,src):
        A+= [[x,y,1,0,0,0,-u*x,-u*y],[0,0,0,x,y,1,-v*x,-v*y]]; b+=[u,v]
    c=np.linalg.solve(np.array(A,float),np.array(b,float))
    W=int(max(p[0] for p in dst))+8;H=int(max(p[1] for p in dst))+8
    return img.transform((W,H),Image.PERSPECTIVE,c,Image.BICUBIC,fillcolor=255)
im4,_=base('m',4)
p=persp(im4,[(18,6),(168,14),(184,166),(6,158)]); save('askew',p)
a=np.asarray(p.convert('L'),float); yy,xx=np.mgrid[0:a.shape[0],0:a.shape[1]]
a=a*(0.55+0.4*xx/a.shape[1])+rng.normal(0,9,a.shape)
d=Image.fromarray(np.clip(a,0,255).astype(np.uint8)).filter(ImageFilter.GaussianBlur(0.7)); save('dim',d)
s=np.asarray(im4).copy(); s[75:95,80:100]=0; save('smudged',Image.fromarray(s))
s=np.asarray(im4).copy(); s[60:120,40:130]=128; save('ruined',Image.fromarray(s))
